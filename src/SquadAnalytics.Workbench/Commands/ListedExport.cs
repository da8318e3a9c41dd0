using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Writes what may leave the club, and lets the logbook list it, so that removing a person can say where they were shown.</summary>
/// <param name="logbook">The logbook.</param>
/// <param name="isInvented">Whether the data are invented: they concern nobody, and are not listed.</param>
/// <param name="unlisted">Whether to write although the logbook cannot list it.</param>
internal sealed class ListedExport(Logbook logbook, bool isInvented, bool unlisted)
{
    /// <summary>The option that exports without listing.</summary>
    public const string Unlisted = "--unlisted";

    /// <summary>The option as the help shows it.</summary>
    public const string Usage = "--unlisted                 write it although the logbook cannot be written, and so cannot list it";

    private readonly bool _isListed = !isInvented && !unlisted;

    /// <summary>Why nothing can be written, or null.</summary>
    public string? Obstacle => _isListed && logbook.IsReadOnly
        ? $"Nothing was exported: the logbook cannot list the export, because {logbook.ReadOnlyReason}. Close what has it open, or export with {Unlisted}."
        : null;

    /// <summary>Writes the files, whole or not at all.</summary>
    /// <param name="kind">What they are.</param>
    /// <param name="files">The files.</param>
    /// <param name="folder">Their folder; new or empty.</param>
    /// <param name="athleteIds">Whom they show; empty means the whole squad.</param>
    public void Write(string kind, IReadOnlyList<ExportedFile> files, string folder, IReadOnlyList<string> athleteIds) => ExportFolder.Write(files, folder, () =>
    {
        if (_isListed) logbook.RecordExport(kind, folder, athleteIds);
    });
}
