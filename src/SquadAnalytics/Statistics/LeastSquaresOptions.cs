namespace SquadAnalytics.Statistics;

/// <summary>How a least-squares fit is made.</summary>
public sealed record LeastSquaresOptions
{
    /// <summary>
    /// A column counts as explained by the earlier ones when less than this share of its length is left; default 10⁻¹¹, which keeps the
    /// tenth-degree polynomial of NIST's Filip and still finds exact dependences, whose rests are near 10⁻¹⁵.
    /// </summary>
    public double RankTolerance { get; init; } = 1e-11;
}
