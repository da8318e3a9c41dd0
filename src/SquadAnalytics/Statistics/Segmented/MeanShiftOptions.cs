using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Settings of <see cref="MeanShifts"/>; every default is visible here and echoed in the result.</summary>
public sealed record MeanShiftOptions
{
    private readonly int _maximumBreaks = 5;
    private readonly double _smallestShare = 0.15;

    /// <summary>The most breaks to consider; 5 by default, fewer where the observations do not reach.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int MaximumBreaks
    {
        get => _maximumBreaks;
        init => _maximumBreaks = Require.AtLeast(1, value);
    }

    /// <summary>The smallest segment as a share of all observations; 0.15 by default, and always 2 observations or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0, or above one half.</exception>
    public double SmallestShare
    {
        get => _smallestShare;
        init => _smallestShare = Require.Positive(value) <= 0.5 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The smallest share of a segment lies above 0 and not above 0.5.");
    }

    /// <summary>Level of the limits; 90 % by default.</summary>
    public ConfidenceLevel ConfidenceLevel { get; init; }
}
