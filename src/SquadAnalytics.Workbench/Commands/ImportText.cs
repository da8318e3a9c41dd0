using System.Globalization;
using SquadAnalytics.Import;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>The account of an import as text, for people.</summary>
internal static class ImportText
{
    private const int RowsShown = 5;

    /// <summary>Header and number of a problem's column, or null where it concerns the whole row.</summary>
    public static string? ColumnOf(CellProblem problem) =>
        problem.ColumnNumber is null ? null : string.Create(CultureInfo.InvariantCulture, $"{(string.IsNullOrEmpty(problem.Column) ? "" : problem.Column + " ")}(column {problem.ColumnNumber})");

    public static string Of(ImportResult result)
    {
        List<string> lines = [result.Report.ToString()];
        if (result.Report.Refused.Count > 0) lines.AddRange(["", "Refused:", .. result.Report.Refused.SelectMany(row => row.Problems).Select(problem => $"  {problem}")]);
        if (result.Decisions.Count > 0) lines.AddRange(["", "Only a person can tell:", .. result.Decisions.SelectMany(Of)]);
        if (result.Report.Warnings.Count > 0) lines.AddRange(["", "Kept, but odd:", .. result.Report.Warnings.Select(warning => $"  {warning}")]);
        if (result.Report.Notes.Count > 0) lines.AddRange(["", "Notes:", .. result.Report.Notes.Select(note => $"  {note}")]);
        return string.Join(Environment.NewLine, lines);
    }

    private static IEnumerable<string> Of(ImportDecision decision)
    {
        yield return $"  {decision.Text}";
        yield return $"    answer \"{decision.Id}\" with: {string.Join(" | ", decision.Choices)}";
        var more = decision.Rows.Count > RowsShown ? string.Create(CultureInfo.InvariantCulture, $" and {decision.Rows.Count - RowsShown} more") : "";
        yield return $"    waiting: {string.Join("; ", decision.Rows.Take(RowsShown))}{more}";
    }
}
