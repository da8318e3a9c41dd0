namespace SquadAnalytics.Archive;

/// <summary>A value that a query names, as <c>$athlete</c>.</summary>
/// <param name="Name">Its name, without the dollar sign.</param>
/// <param name="Value">Its value: text, a number, true or false, a date, <see cref="Seconds"/> or <see cref="Percent"/>; null for nothing.</param>
public sealed record QueryParameter(string Name, object? Value);
