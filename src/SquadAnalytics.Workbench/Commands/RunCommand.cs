using System.Globalization;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Parameters;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary><c>run</c>: answers a question by running its notebook, and keeps the report.</summary>
internal sealed class RunCommand : Command
{
    public override string Name => "run";

    public override string Summary => "Runs a notebook, prints its findings and keeps a report.";

    public override IReadOnlyList<string> Usage { get; } =
    [
        "run NOTEBOOK [--logbook FOLDER] [--set NAME=VALUE]... [--out FOLDER] [--time-limit SECONDS]",
        "NOTEBOOK                   an .ipynb file, or one that comes along: " + (Shipped.NotebookNames() is { Count: > 0 } names ? string.Join(", ", names) : "(none)"),
        "--logbook FOLDER           the squad's logbook (default: the invented sample squad)",
        "--set NAME=VALUE           a value for a parameter of the notebook: 1.5, 2026-03-01, true, text",
        "--out FOLDER               where the run is kept (default: a new folder in reports/ here or, where that cannot be written, in your data folder)",
        "--time-limit SECONDS       how long one cell may run (default: 120)",
    ];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var named = arguments.Option("--logbook");
        var limits = Limits(arguments.Option("--time-limit"));
        var kept = arguments.Option("--out");
        IReadOnlyList<ParameterSetting> settings;
        try
        {
            settings = [.. arguments.Options("--set").Select(ParameterSetting.Parse)];
        }
        catch (ParameterException error)
        {
            throw new UsageException(error.Message);
        }
        arguments.RequireNoOthers();
        var path = NotebookPath(arguments.Plain);
        var request = new RunRequest(Path.GetFileNameWithoutExtension(path), new Notebook([]), Path.GetDirectoryName(path)!)
        {
            LogbookFolder = Folder(named),
            DataNote = named is null ? "Invented data: the sample squad does not exist." : null,
            Settings = settings,
        };
        return await RunAsync(path, request, limits, kept is null ? null : KeptRunFolder.Named(kept), output, progress).ConfigureAwait(false);
    }

    /// <summary>A logbook of one's own has other boxers than the notebook's examples: said before anything runs.</summary>
    private static void RequireExamples(RunRequest request)
    {
        if (request.DataNote is not null || request.Notebook.ParametersCell is not { } cell || Read(request.LogbookFolder!) is not { } squad) return;
        SquadChoices.RequireIn(ParametersCell.Read(cell.Source), request.Settings, squad);
    }

    private static Squad? Read(string logbookFolder)
    {
        try
        {
            using var logbook = Logbook.Open(logbookFolder);
            return logbook.Squad;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or FormatException or LogbookContentException)
        {
            // The run tells, with its report.
            return null;
        }
    }

    private static async Task<int> RunAsync(string path, RunRequest request, KernelLimits limits, string? folder, TextWriter output, TextWriter progress)
    {
        using var interrupt = new Interrupt();
        await using var kernels = new KernelSource(KernelCommand.ForThisProgram(), limits);
        // The process warms up while the notebook is being read.
        kernels.Prepare();
        try
        {
            request = request with { Notebook = NotebookFile.Read(path) };
            RequireExamples(request);
            // A notebook that never looks at the logbook shows nothing of the invented squad.
            if (!request.Notebook.Cells.Any(cell => cell.Source.Contains("logbook", StringComparison.Ordinal))) request = request with { DataNote = null };
            var run = await new NotebookRunner(kernels, TimeProvider.System).RunAsync(request, cell => Report(cell, progress), interrupt.Token).ConfigureAwait(false);
            folder ??= KeptRunFolder.New(Environment.CurrentDirectory, Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), run.Name, run.Started);
            return Finish(run, KeptRun.Write(run, folder), output, progress);
        }
        catch (ParameterException error)
        {
            throw new UsageException(error.Message);
        }
        catch (Exception error) when (error is NotebookFormatException or IOException or UnauthorizedAccessException)
        {
            await progress.WriteLineAsync(error.Message).ConfigureAwait(false);
            return Problems;
        }
    }

    private static int Finish(NotebookRun run, string report, TextWriter output, TextWriter progress)
    {
        if (run.Problem is { } problem) progress.WriteLine("Stopped: " + problem);
        if (run.Findings.Count > 0) output.WriteLine(new Findings(run.Findings).ToText());
        output.WriteLine("Report: " + report);
        return run.Succeeded ? Done : Problems;
    }

    private static void Report(CellRun cell, TextWriter progress)
    {
        var outcome = cell.Result.Ending switch
        {
            CellEnding.Completed => string.Create(CultureInfo.InvariantCulture, $"{cell.Result.Duration.TotalSeconds:0.00} s"),
            CellEnding.Skipped => "passed over: for other programs",
            CellEnding.NotRun => "not run",
            _ => string.Create(CultureInfo.InvariantCulture, $"failed after {cell.Result.Duration.TotalSeconds:0.00} s: {cell.Result.Fault}"),
        };
        progress.WriteLine(string.Create(CultureInfo.InvariantCulture, $"cell {cell.Number}  {cell.Cell.Name()}  {outcome}"));
        if (cell.Result.Fault?.Excerpt is { } excerpt) progress.WriteLine("  > " + excerpt);
    }

    private static string NotebookPath(IReadOnlyList<string> plain)
    {
        if (plain.Count != 1) throw new UsageException(plain.Count == 0 ? "Name the notebook: run NOTEBOOK." : $"One notebook is run at a time; '{plain[1]}' is one too many.");
        var operand = plain[0];
        foreach (var candidate in (string[])[operand, operand + ".ipynb"])
        {
            if (File.Exists(candidate)) return Path.GetFullPath(candidate);
        }
        var shipped = Path.Combine(Shipped.Notebooks, Path.GetFileName(operand) + ".ipynb");
        if (Path.GetFileName(operand) == operand && File.Exists(shipped)) return shipped;
        var names = Shipped.NotebookNames();
        throw new UsageException($"There is no notebook '{operand}'. " + (names.Count > 0 ? $"By name there are: {string.Join(", ", names)}." : "None comes with this program."));
    }

    private static string Folder(string? named)
    {
        var folder = named ?? Shipped.SampleSquad;
        if (Directory.Exists(folder)) return Path.GetFullPath(folder);
        throw new UsageException(named is null ? $"The sample squad is missing ({folder}); name a logbook with --logbook." : $"There is no folder {named}.");
    }

    private static KernelLimits Limits(string? seconds)
    {
        if (seconds is null) return KernelLimits.Default;
        return double.TryParse(seconds, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var limit) && limit is > 0 and <= 86_400
            ? KernelLimits.Default with { CellTime = TimeSpan.FromSeconds(limit) }
            : throw new UsageException($"--time-limit is a number of seconds above 0 and up to 86400, not '{seconds}'.");
    }
}
