using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using SquadAnalytics.Import;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>The account of an import as JSON, for other programs.</summary>
internal static class ImportJson
{
    private static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    public static string Of(ImportResult result)
    {
        var report = result.Report;
        return JsonSerializer.Serialize(
            new Account(
                report.Rows,
                report.Kept,
                report.RefusedRows,
                report.DecisionRows,
                [.. report.Refused.SelectMany(row => row.Problems).Select(problem => new Cell(problem.File, problem.Sheet, problem.Line, ImportText.ColumnOf(problem), problem.Text, problem.Reason, problem.Accepts))],
                [.. result.Decisions.Select(decision => new Question(decision.Id, decision.Kind, decision.Text, decision.Choices, decision.Rows))]),
            Format);
    }

    private sealed record Account(int Rows, int Kept, int RefusedRows, int DecisionRows, IReadOnlyList<Cell> Refused, IReadOnlyList<Question> Decisions);

    private sealed record Cell(string File, string? Sheet, long Line, string? Column, string? Text, string Reason, string Accepts);

    private sealed record Question(string Id, DecisionKind Kind, string Text, IReadOnlyList<string> Choices, IReadOnlyList<RowPlace> Rows);
}
