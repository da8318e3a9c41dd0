namespace SquadAnalytics.Storage;

/// <summary>One cell of a held row, exactly as it was written.</summary>
/// <param name="ColumnNumber">Number of the column in the source, from 1.</param>
/// <param name="Column">Header of the column as written; empty where it had none.</param>
/// <param name="Text">The cell as written.</param>
public sealed record HeldCell(int ColumnNumber, string Column, string Text);
