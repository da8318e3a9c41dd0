namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>The code of one cell, as it is handed to a kernel.</summary>
/// <param name="Number">The cell's number in its notebook, from 1; it stands in messages and stack traces.</param>
/// <param name="Language">The kernel's name: <c>csharp</c> or <c>sql</c>.</param>
/// <param name="Source">The code.</param>
public sealed record CellCode(int Number, string Language, string Source);
