namespace SquadAnalytics.Import;

/// <summary>A question that nobody has answered yet, and the rows that wait for it.</summary>
internal sealed class PendingDecision(string id, DecisionKind kind, string text, IReadOnlyList<string> choices, string? template)
{
    public string Id { get; } = id;

    public DecisionKind Kind { get; } = kind;

    public string Text { get; } = text;

    public IReadOnlyList<string> Choices { get; } = choices;

    public string? Template { get; } = template;

    public List<ParsedRow> Rows { get; } = [];
}
