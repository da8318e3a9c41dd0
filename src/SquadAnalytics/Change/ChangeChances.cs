namespace SquadAnalytics.Change;

/// <summary>Chances that the true change is faster than -S, within ±S, or slower than S. Posterior probabilities only under a flat prior.</summary>
/// <param name="Faster">T((-S - D) / SE).</param>
/// <param name="Trivial">The rest.</param>
/// <param name="Slower">1 - T((S - D) / SE).</param>
public sealed record ChangeChances(Estimate Faster, Estimate Trivial, Estimate Slower)
{
    /// <summary>The three chances, with their label.</summary>
    public override string ToString() => FormattableString.Invariant($"under a flat prior: faster {Faster.Value:0.000}, trivial {Trivial.Value:0.000}, slower {Slower.Value:0.000}");
}
