namespace SquadAnalytics.Import;

/// <summary>One cell of a row as written.</summary>
/// <param name="Column">Its header; empty where there is none.</param>
/// <param name="ColumnNumber">Number of its column, from 1.</param>
/// <param name="Text">The text as written.</param>
public sealed record RowCell(string Column, int ColumnNumber, string Text);
