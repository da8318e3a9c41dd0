namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Something that could be written at a place in the code.</summary>
/// <param name="Name">How it is shown.</param>
/// <param name="Kind">What it is: <c>Method</c>, <c>Property</c>, <c>Class</c>, <c>Keyword</c>.</param>
/// <param name="Text">What is written.</param>
public sealed record CompletionChoice(string Name, string Kind, string Text);
