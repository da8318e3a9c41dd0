using System.Globalization;
using System.Text;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>The files that a run is exported as. What may leave the club is settled before: see <see cref="SharedRun"/>.</summary>
public static class RunExport
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>The files of an export.</summary>
    /// <param name="run">The run as it may be shared.</param>
    /// <param name="kind">What it becomes.</param>
    /// <param name="squad">The squad whose sessions and sets go along with tables, or null to leave them out.</param>
    /// <returns>The files; none where the run has nothing of the kind.</returns>
    public static IReadOnlyList<ExportedFile> Of(NotebookRun run, ExportKind kind, Squad? squad = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        return kind switch
        {
            ExportKind.Html => [Text(KeptRun.ReportFile, RunReport.Of(run).ToHtml()), Text(KeptRun.NotebookFileName, KeptRun.ExecutedNotebook(run))],
            ExportKind.Docx => [new ExportedFile("report.docx", WordReport.ToBytes(RunReport.Of(run)))],
            ExportKind.Csv => TablesOf(run, squad),
            ExportKind.Figures => [.. FiguresOf(run)],
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such kind of export."),
        };
    }

    /// <summary>Everything that a reader of the run's exports may read, in one text.</summary>
    /// <param name="run">The run.</param>
    public static string Words(NotebookRun run) => RunReport.Of(run).Words();

    private static IReadOnlyList<ExportedFile> TablesOf(NotebookRun run, Squad? squad)
    {
        var shown = Values(run).Select(static value => value.Form(MimeTypes.Table) is { } json ? Table.FromJson(json) : value.Form(MimeTypes.Csv) is { } csv ? CsvTable.Read(csv) : null).OfType<Table>();
        var tables = shown.Select(static (table, k) => new NamedTable(Numbered("table", k), table)).ToList();
        if (squad is not null) tables.AddRange([new NamedTable("sessions", Tables.LongSessions(squad)), new NamedTable("sets", Tables.LongSets(squad))]);
        return tables.Count == 0 ? [] : TablePackage.Of(run.Notebook.Title ?? run.Name, tables);
    }

    private static IEnumerable<ExportedFile> FiguresOf(NotebookRun run)
    {
        var captions = new StringBuilder();
        var number = 0;
        foreach (var value in Values(run))
        {
            if (value.Form(MimeTypes.Svg) is not { } svg) continue;
            var name = Numbered("figure", number++);
            yield return Text(name + ".svg", svg);
            var pixels = KeptRun.Pixels(value);
            if (pixels is not null) yield return new ExportedFile(name + ".png", pixels);
            var picture = new PicturePart(value.Form(MimeTypes.Html) ?? "", pixels ?? []);
            captions.Append(CultureInfo.InvariantCulture, $"{name}. {picture.Title} {picture.Caption}\nIn words: {picture.AlternativeText}\n\n");
        }

        if (number > 0) yield return Text("captions.txt", captions.ToString());
    }

    private static IEnumerable<ShownValue> Values(NotebookRun run) => run.Cells.SelectMany(static cell => cell.Result.Outputs).OfType<ShownValue>();

    private static string Numbered(string kind, int index) => string.Create(CultureInfo.InvariantCulture, $"{kind}-{index + 1:00}");

    private static ExportedFile Text(string name, string text) => new(name, Utf8.GetBytes(text));
}
