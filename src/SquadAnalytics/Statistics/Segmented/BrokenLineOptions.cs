namespace SquadAnalytics.Statistics;

/// <summary>Settings of <see cref="BrokenLine"/>; every default is visible here and echoed in the result.</summary>
public sealed record BrokenLineOptions
{
    /// <summary>Which bent line; a hinge by default.</summary>
    public BrokenLineShape Shape { get; init; }

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel ConfidenceLevel { get; init; }

    /// <summary>Unit of the response, and so of the intercept.</summary>
    public Unit ResponseUnit { get; init; }

    /// <summary>Unit of the slopes.</summary>
    public Unit SlopeUnit { get; init; }
}
