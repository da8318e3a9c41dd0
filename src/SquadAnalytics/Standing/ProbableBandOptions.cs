namespace SquadAnalytics.Standing;

/// <summary>Options of <see cref="ProbableBand"/>.</summary>
public sealed record ProbableBandOptions
{
    private readonly double _needed = 0.90;

    /// <summary>The probability from which a new band is announced after a single test; above 0.5 and below 1. Default 0.90.</summary>
    public double NeededProbability
    {
        get => _needed;
        init => _needed = value is > 0.5 and < 1 ? value : throw new ArgumentOutOfRangeException(nameof(NeededProbability), value, "NeededProbability must be above 0.5 and below 1.");
    }
}
