using System.Text.Json;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>What a transaction will do, written before it does it: enough to finish it after it was cut short.</summary>
/// <param name="Description">The change in words.</param>
/// <param name="At">When it was accepted.</param>
/// <param name="Files">Every file it changes.</param>
/// <param name="Previous">What becomes of the kept state.</param>
/// <param name="Erased">Files and folders it deletes without keeping them, as paths within the logbook folder.</param>
internal sealed record WriteAheadRecord(string Description, DateTimeOffset At, IReadOnlyList<FileChange> Files, PreviousState Previous, IReadOnlyList<string> Erased)
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true };

    public byte[] ToBytes() => JsonSerializer.SerializeToUtf8Bytes(this, Options);

    /// <summary>Reads a record. It may come from a backup that somebody else made, so its paths are not trusted.</summary>
    /// <exception cref="LogbookContentException">The file is not such a record, or names a file outside the logbook.</exception>
    public static WriteAheadRecord FromFile(string path)
    {
        try
        {
            var record = JsonSerializer.Deserialize<WriteAheadRecord>(File.ReadAllBytes(path), Options);
            if (record is { Description: not null, Files: not null, Erased: not null }
                && record.Files.All(change => Layout.Belongs(change.Path, [Layout.DraftsName, Layout.ImportsName, Layout.NotebooksName]))
                && record.Erased.All(erased => Layout.Belongs(erased, [Layout.ImportsName, Layout.ReportsName, Layout.SetAsideName]))) return record;
        }
        catch (JsonException)
        {
            // Said below.
        }

        throw new LogbookContentException([new CellProblem(path, 1, "is not the record of a change", "the file as this program wrote it; delete its folder to give up going back")]);
    }
}
