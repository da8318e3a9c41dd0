using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>The difference between two blocks from a mixed model of all eligible tests.</summary>
public sealed record BlockModelResult
{
    /// <summary>Second block minus first, in seconds: negative = faster. With a trend, the jump beyond it.</summary>
    public required Estimate Change { get; init; }

    /// <summary>The model as it was fitted.</summary>
    public required MixedFit Model { get; init; }

    /// <summary>Attendance in the first block.</summary>
    public required BlockAttendance First { get; init; }

    /// <summary>Attendance in the second block.</summary>
    public required BlockAttendance Second { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => Change.Notes;

    /// <summary>The difference.</summary>
    public override string ToString() => $"{Second.Block} differed from {First.Block} by {Change}";
}
