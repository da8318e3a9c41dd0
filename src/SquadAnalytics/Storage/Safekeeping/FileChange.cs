namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>What a transaction does to one file.</summary>
/// <param name="Path">Path within the logbook folder, parts separated by <c>/</c>.</param>
/// <param name="Before">SHA-256 of the file before, or null where there was none.</param>
/// <param name="After">SHA-256 of the file afterwards, or null where it is gone.</param>
internal sealed record FileChange(string Path, string? Before, string? After);
