namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>A place in a cell's code.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Column">The number of the character in the line before which it lies, from 1.</param>
public readonly record struct CodePlace(int Line, int Column);
