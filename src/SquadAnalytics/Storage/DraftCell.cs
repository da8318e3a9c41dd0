namespace SquadAnalytics.Storage;

/// <summary>One cell of a session that is being typed.</summary>
/// <param name="At">When it was typed.</param>
/// <param name="Row">The row: an athlete's id, or any text that the typing grid chose; empty for what concerns the whole session.</param>
/// <param name="Column">The column.</param>
/// <param name="Text">The cell as typed.</param>
public sealed record DraftCell(DateTimeOffset At, string Row, string Column, string Text);
