using System.Globalization;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary><c>export</c>: turns a kept run into files that may leave the club.</summary>
internal sealed class ExportCommand : Command
{
    public override string Name => "export";

    public override string Summary => "Turns a kept run into a page, a document, tables or figures that may be shared.";

    public override IReadOnlyList<string> Usage { get; } =
    [
        "export RUN --to html|docx|csv|figures [--out FOLDER] [--logbook FOLDER] [--unlisted]",
        "RUN                        the folder of a kept run, the name of one, or latest",
        "--to html                  one self-contained page (print it for PDF), and the executed notebook",
        "--to docx                  a document with styles, numbered figures and tables",
        "--to csv                   every table, and all sessions and sets by code, with a data package",
        "--to figures               every figure as SVG and PNG, with captions",
        "--out FOLDER               a new or empty folder (default: a new one in exports/ here or, where that cannot be written, in your data folder)",
        "--logbook FOLDER           the logbook that the run read (default: the one that it names)",
        ListedExport.Usage,
        "Juniors, and others without a consent to be named in reports, are shown by code; health entries and groups below five are withheld.",
    ];

    public override IReadOnlyList<string> Switches => [ListedExport.Unlisted];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var kind = arguments.Choice<ExportKind?>("--to", null, new("html", ExportKind.Html), new("docx", ExportKind.Docx), new("csv", ExportKind.Csv), new("figures", ExportKind.Figures)) ?? throw new UsageException("Say what it is to become: --to html, docx, csv or figures.");
        var (named, namedLogbook) = (arguments.Option("--out"), arguments.Option("--logbook"));
        arguments.RequireNoOthers();
        if (arguments.Plain.Count != 1) throw new UsageException(arguments.Plain.Count == 0 ? $"Name the run: a folder, a name, or {KeptRunSearch.Latest}." : $"One run is exported at a time; '{arguments.Plain[1]}' is one too many.");
        var folder = named is null ? null : ExportFolder.Named(named);
        var (here, user) = (Environment.CurrentDirectory, Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData));
        var kept = new KeptRunSearch(here, user, namedLogbook).Find(arguments.Plain[0]);
        try
        {
            var run = KeptRun.Read(kept);
            var from = namedLogbook ?? run.LogbookFolder ?? throw new UsageException("This run does not say which logbook it read, and without it nobody knows whose names must not be shown: name it with --logbook.");
            using var logbook = LogbookFolder.Open(from, progress);
            if (logbook is null) return Problems;
            folder ??= ExportFolder.New(here, user, $"{Path.GetFileName(kept)}-{kind.ToString().ToLowerInvariant()}");
            return await ExportAsync(run, kind, logbook, folder, arguments.Has(ListedExport.Unlisted), output, progress).ConfigureAwait(false);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or LogbookNotWrittenException or LogbookChangedOutsideException)
        {
            await progress.WriteLineAsync($"Nothing was exported: {error.Message}").ConfigureAwait(false);
            return Problems;
        }
    }

    private static async Task<int> ExportAsync(NotebookRun run, ExportKind kind, Logbook logbook, string folder, bool unlisted, TextWriter output, TextWriter progress)
    {
        var listed = new ListedExport(logbook, run.DataNote is not null, unlisted);
        if (listed.Obstacle is { } obstacle)
        {
            await progress.WriteLineAsync(obstacle).ConfigureAwait(false);
            return Problems;
        }

        var export = SharedExport.Of(run, kind, logbook, DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime));
        if (export.Files.Count == 0)
        {
            await progress.WriteLineAsync($"Nothing was exported: the run shows no {(kind == ExportKind.Figures ? "figure" : "table")}.").ConfigureAwait(false);
            return Problems;
        }

        listed.Write($"{run.Name} as {kind.ToString().ToLowerInvariant()}", export.Files, folder, export.AthleteIds);
        if (export.AthletesByCode > 0) await progress.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"Shown by code: {export.AthletesByCode} athletes who are juniors or did not consent to be named.")).ConfigureAwait(false);
        if (kind == ExportKind.Csv && !export.IsSameData) await progress.WriteLineAsync("Sessions and sets were left out: the logbook has changed since the run, so they would not fit its tables. Run it again to have them.").ConfigureAwait(false);
        await output.WriteLineAsync($"Exported: {folder}").ConfigureAwait(false);
        foreach (var file in export.Files) await output.WriteLineAsync($"  {file.Name}").ConfigureAwait(false);
        return Done;
    }
}
