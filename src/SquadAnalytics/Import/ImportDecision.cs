namespace SquadAnalytics.Import;

/// <summary>A question that only a person can answer before its rows can be kept.</summary>
/// <param name="Id">Its id: the same for the same file and question each time.</param>
/// <param name="Kind">What is asked.</param>
/// <param name="Text">The question, with the original text that raised it.</param>
/// <param name="Choices">The answers that are accepted.</param>
/// <param name="Rows">The rows that wait for it.</param>
public sealed record ImportDecision(string Id, DecisionKind Kind, string Text, IReadOnlyList<string> Choices, IReadOnlyList<RowPlace> Rows)
{
    /// <summary>The choice that is a pattern to fill in, such as <c>yyyy-mm-dd</c>, <c>clock every N s</c> or <c>athlete CODE</c>, and no answer as it stands; or null.</summary>
    public string? Template { get; init; }

    /// <summary>The question and its choices.</summary>
    public override string ToString() => $"{Text} [{string.Join(" | ", Choices)}]";
}
