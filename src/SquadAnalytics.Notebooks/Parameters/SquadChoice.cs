namespace SquadAnalytics.Notebooks.Parameters;

/// <summary>A value that a parameter can take because the squad has it.</summary>
/// <param name="Value">The value: a code, an id, a date.</param>
/// <param name="Text">What a person calls it.</param>
public sealed record SquadChoice(string Value, string Text);
