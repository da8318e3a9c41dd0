namespace SquadAnalytics.Import;

/// <summary>A text file, or one sheet of a workbook: lines that can be read as often as needed, from the start each time.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Name">Name of the sheet, or null.</param>
/// <param name="Lines">Starts reading its lines that are not blank.</param>
internal sealed record SourceSheet(string File, string? Name, Func<IEnumerable<SourceLine>> Lines);
