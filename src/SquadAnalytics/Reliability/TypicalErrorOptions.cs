using SquadAnalytics.Internals;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reliability;

/// <summary>Options of <see cref="TypicalError"/>.</summary>
public sealed record TypicalErrorOptions
{
    private readonly int? _windowLength = 4;

    /// <summary>The measure whose noise is asked for; the session total by default.</summary>
    public SessionMeasure Measure { get; init; }

    /// <summary>The longest run of consecutive tests that are compared with one another; 2 or more. Default 4; null compares the whole season.</summary>
    /// <remarks>A block of T tests is cut into the fewest windows, n = ⌈T / length⌉, of nearly equal length: window j of 0 to n - 1 begins after ⌊j T / n⌋ tests. 13 tests make windows of
    /// 3, 3, 3 and 4, none of one test.</remarks>
    public int? WindowLength
    {
        get => _windowLength;
        init => _windowLength = value is { } length ? Require.AtLeast(2, length, nameof(WindowLength)) : null;
    }

    /// <summary>Training blocks: a window never reaches from one into another.</summary>
    public IReadOnlyList<TrainingBlock> Blocks { get; init; } = [];

    /// <summary>What makes sessions of different athletes the same test.</summary>
    public TestGrouping Grouping { get; init; }

    /// <summary>Level of the interval; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
