namespace SquadAnalytics.Sets;

/// <summary>The squad's usual work time of each set on one test day.</summary>
public sealed record SquadProfileResult
{
    /// <summary>The test day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Median work time of each set over the athletes, in the order of the sets.</summary>
    public required IReadOnlyList<Seconds> Medians { get; init; }

    /// <summary>How many athletes completed the test that day.</summary>
    public required int Athletes { get; init; }

    /// <summary>The medians, for example <c>2031-03-27, 18 athletes: 60.10 s, 61.20 s</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{Date:yyyy-MM-dd}, {Athletes} athletes: {string.Join(", ", Medians)}");
}
