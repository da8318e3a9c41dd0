namespace SquadAnalytics.Import;

/// <summary>One bad cell of a row, before its text is fetched.</summary>
/// <param name="Column">Its column, or null where the whole row is at fault.</param>
/// <param name="Reason">Why it cannot be read.</param>
/// <param name="Accepts">What would be accepted.</param>
internal sealed record RowFault(Column? Column, string Reason, string Accepts);
