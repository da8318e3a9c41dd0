using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>A kept run made ready to leave the club.</summary>
/// <param name="Files">The files; none where the run shows nothing of the kind.</param>
/// <param name="AthleteIds">Whom they show.</param>
/// <param name="AthletesByCode">How many athletes are shown by code, as juniors or without consent.</param>
/// <param name="IsSameData">Whether the logbook is as it was at the run; only then do sessions and sets go along.</param>
internal sealed record SharedExport(IReadOnlyList<ExportedFile> Files, IReadOnlyList<string> AthleteIds, int AthletesByCode, bool IsSameData)
{
    /// <summary>Takes out of a run what must not leave the club, and makes its files.</summary>
    /// <param name="run">The run.</param>
    /// <param name="kind">What it becomes.</param>
    /// <param name="logbook">The logbook that it read.</param>
    /// <param name="today">The date of the export, by which juniors are told.</param>
    public static SharedExport Of(NotebookRun run, ExportKind kind, Logbook logbook, DateOnly today)
    {
        var discretion = Discretion.Of(logbook.Squad, logbook.HealthNotes, today);
        var shared = SharedRun.Of(run, discretion);
        var isSameData = run.DataFingerprint == logbook.Fingerprint;
        return new(
            RunExport.Of(shared, kind, isSameData ? logbook.Squad : null),
            kind == ExportKind.Csv && isSameData ? [.. logbook.Squad.Sessions.Select(static session => session.AthleteId).Distinct(StringComparer.Ordinal)] : [.. discretion.AthletesIn(RunExport.Words(shared))],
            discretion.AthletesByCode,
            isSameData);
    }
}
