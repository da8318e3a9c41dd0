using System.Globalization;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Storage;
using SquadAnalytics.Workbench.Web;

namespace SquadAnalytics.Workbench.Commands;

/// <summary><c>open</c>: serves the workbench to a browser on this machine.</summary>
internal sealed class OpenCommand : Command
{
    private const string NoBrowser = "--no-browser";

    public override string Name => "open";

    public override string Summary => "Opens the workbench in a browser on this machine, on a logbook of yours or on a copy of the sample.";

    public override IReadOnlyList<string> Usage { get; } =
    [
        "open [FOLDER] [--no-browser] [--idle-minutes N]",
        "FOLDER                     the logbook; a new or empty folder becomes one (default: a copy of the invented sample squad in your data folder)",
        "--no-browser               only print the address",
        "--idle-minutes N           how long a notebook's process may lie idle before it is given up (default: 10)",
    ];

    public override IReadOnlyList<string> Switches => [NoBrowser];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var idle = IdleTime(arguments.Option("--idle-minutes"));
        arguments.RequireNoOthers();
        if (arguments.Plain.Count > 1) throw new UsageException($"'{arguments.Plain[1]}' is one folder too many.");
        var folder = arguments.Plain is [var named] ? Path.GetFullPath(named) : SampleCopy.Folder();
        if (!Directory.Exists(folder) || !Directory.EnumerateFileSystemEntries(folder).Any()) Logbook.Create(folder, Path.GetFileName(folder)).Dispose();
        using (var logbook = LogbookFolder.Open(folder, progress))
        {
            if (logbook is null) return Problems;
        }

        return await WorkbenchServer.RunAsync(new WorkbenchOptions(folder, !arguments.Has(NoBrowser)) { IdleTime = idle }, output, CancellationToken.None).ConfigureAwait(false);
    }

    private static TimeSpan IdleTime(string? minutes)
    {
        if (minutes is null) return KernelLimits.Default.IdleTime;
        return double.TryParse(minutes, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= 1440
            ? TimeSpan.FromMinutes(number)
            : throw new UsageException($"--idle-minutes is a number of minutes above 0 and up to 1440, not '{minutes}'.");
    }
}
