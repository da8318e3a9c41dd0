namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>A value that cells left in scope.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">Its type.</param>
/// <param name="Text">The value in a few words.</param>
/// <param name="Language">The kernel that holds it.</param>
public sealed record ScopeValue(string Name, string Type, string Text, string Language);
