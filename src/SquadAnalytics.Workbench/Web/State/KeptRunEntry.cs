namespace SquadAnalytics.Workbench.Web.State;

/// <summary>One kept run as a list shows it.</summary>
/// <param name="Name">Name of its folder.</param>
/// <param name="Title">Title of its notebook.</param>
/// <param name="Started">When it was started.</param>
/// <param name="Succeeded">Whether it went to its end.</param>
/// <param name="DataFingerprint">SHA-256 of the data it read, or null.</param>
/// <param name="Parameters">Its parameters in one line.</param>
public sealed record KeptRunEntry(string Name, string Title, DateTimeOffset Started, bool Succeeded, string? DataFingerprint, string Parameters);
