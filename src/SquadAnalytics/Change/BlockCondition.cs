namespace SquadAnalytics.Change;

/// <summary>One condition of testing in two blocks.</summary>
/// <param name="Kind">Which condition.</param>
/// <param name="First">Its values in the first block, the most frequent first.</param>
/// <param name="Second">Its values in the second block, the most frequent first.</param>
public sealed record BlockCondition(BlockConditionKind Kind, IReadOnlyList<ConditionCount> First, IReadOnlyList<ConditionCount> Second)
{
    /// <summary>Whether it was written down in both blocks, so that it can be judged.</summary>
    public bool IsKnown => Known(First).Count > 0 && Known(Second).Count > 0;

    /// <summary>Whether a value stands in one block only, or the most frequent one is another.</summary>
    public bool IsChanged => IsKnown && (Known(First)[0] != Known(Second)[0] || !Known(First).ToHashSet(StringComparer.Ordinal).SetEquals(Known(Second)));

    /// <summary>The condition in both blocks.</summary>
    public override string ToString() => $"{Kind.Words()}: {string.Join(", ", First)} | {string.Join(", ", Second)}";

    internal static BlockCondition Of(BlockConditionKind kind, IEnumerable<Session> first, IEnumerable<Session> second, Func<Session, string?> value) =>
        new(kind, Counts(first, value), Counts(second, value));

    private static IReadOnlyList<ConditionCount> Counts(IEnumerable<Session> sessions, Func<Session, string?> value) =>
        [.. sessions.CountBy(session => value(session) ?? "").Select(count => new ConditionCount(count.Key.Length == 0 ? null : count.Key, count.Value)).OrderByDescending(count => count.Tests).ThenBy(count => count.Value, StringComparer.Ordinal)];

    private static List<string> Known(IReadOnlyList<ConditionCount> counts) => [.. counts.Select(count => count.Value).OfType<string>()];
}
