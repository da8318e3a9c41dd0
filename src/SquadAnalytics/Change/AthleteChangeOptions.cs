using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="AthleteChange"/>.</summary>
public sealed record AthleteChangeOptions
{
    private readonly int _baselineTests = 3;

    /// <summary>Seconds (default) or logarithms, reported as percent; the smallest worthwhile change is in the same unit.</summary>
    public Scale Scale { get; init; }

    /// <summary>Level of the interval; 90 % by default, so that each verdict is a 5 % rule.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>How many of the last tests before are averaged as the baseline, where available; 1 or more. Default 3.</summary>
    public int BaselineTests
    {
        get => _baselineTests;
        init => _baselineTests = Require.AtLeast(1, value, nameof(BaselineTests));
    }

    /// <summary>Whether chances under a flat prior are added; off by default.</summary>
    public bool IncludeChances { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
