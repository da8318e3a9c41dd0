using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Settings of <see cref="Bootstrap"/>; every default is visible here and echoed in the result.</summary>
public sealed record BootstrapOptions
{
    private readonly int _resamples = 10_000;

    /// <summary>How many resamples; 10,000 by default, 1,000 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1,000, too few for the tails of an interval.</exception>
    public int Resamples
    {
        get => _resamples;
        init => _resamples = Require.AtLeast(1_000, value);
    }

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel ConfidenceLevel { get; init; }

    /// <summary>Unit of the statistic.</summary>
    public Unit Unit { get; init; }
}
