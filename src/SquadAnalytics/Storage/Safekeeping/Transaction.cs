using System.Globalization;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>Changes several files as one: after a cut at any moment, recovery leaves either all of them changed or none.</summary>
/// <remarks>
/// New contents and copies of the old ones are written and flushed beside the files; then the record is renamed to the commit mark, which is
/// the moment of change. From there on only renames are left, which need no space, and which recovery repeats until the mark is gone.
/// </remarks>
internal sealed class Transaction(Layout layout, Disk disk)
{
    /// <summary>Makes the change durable.</summary>
    /// <param name="record">What changes.</param>
    /// <param name="contents">New content of each changed file that is not deleted, by path.</param>
    public void Run(WriteAheadRecord record, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> contents)
    {
        Prepare(record, contents);
        var written = layout.CommitMark + ".new";
        disk.Write(written, record.ToBytes());
        disk.Replace(written, layout.CommitMark);
        disk.Sync(layout.Pending);
        RollForward(record);
    }

    /// <summary>Finishes or takes back what was cut short.</summary>
    /// <returns>What was done, or null where nothing had been cut short.</returns>
    public LogbookRecovery? Recover()
    {
        if (!Directory.Exists(layout.Pending)) return null;
        if (!File.Exists(layout.CommitMark))
        {
            var begun = Directory.EnumerateFileSystemEntries(layout.Pending).Any();
            Discard();
            return begun ? new LogbookRecovery(RecoveryKind.RolledBack, "a change that had not been accepted yet", []) : null;
        }

        var record = WriteAheadRecord.FromFile(layout.CommitMark);
        var setAside = SetAsideForeign(record);
        RollForward(record);
        return new LogbookRecovery(RecoveryKind.Finished, record.Description, setAside);
    }

    /// <summary>Deletes what was prepared and not committed.</summary>
    public void Discard() => disk.Delete(layout.Pending);

    private void Prepare(WriteAheadRecord record, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> contents)
    {
        Discard();
        disk.CreateFolder(layout.Pending);
        disk.CreateFolder(layout.PendingNew);
        foreach (var (path, content) in contents) disk.Write(Place(layout.PendingNew, path), content);
        SyncTree(layout.PendingNew);
        if (record.Previous == PreviousState.Replaced)
        {
            disk.CreateFolder(layout.PendingBefore);
            foreach (var change in record.Files.Where(change => change.Before is not null)) disk.Copy(layout.At(change.Path), Place(layout.PendingBefore, change.Path));
            disk.Write(Path.Combine(layout.PendingBefore, Layout.AcceptName), record.ToBytes());
            SyncTree(layout.PendingBefore);
        }

        disk.Sync(layout.Folder);
    }

    /// <summary>Every step may have been done before.</summary>
    private void RollForward(WriteAheadRecord record)
    {
        if (record.Previous == PreviousState.Dropped)
        {
            disk.Delete(layout.Previous);
        }
        else if (Directory.Exists(layout.PendingBefore))
        {
            disk.Delete(layout.Previous);
            disk.MoveFolder(layout.PendingBefore, layout.Previous);
        }

        foreach (var change in record.Files)
        {
            if (change.After is null) disk.Delete(layout.At(change.Path));
            else if (File.Exists(Layout.Within(layout.PendingNew, change.Path))) disk.Replace(Layout.Within(layout.PendingNew, change.Path), Place(layout.Folder, change.Path));
        }

        foreach (var path in record.Erased) disk.Delete(layout.At(path));
        var folders = record.Files.Select(change => Path.GetDirectoryName(layout.At(change.Path))!).Append(layout.Folder).Distinct(StringComparer.Ordinal);
        foreach (var folder in folders.Where(Directory.Exists)) disk.Sync(folder);
        disk.Delete(layout.CommitMark);
        disk.Sync(layout.Pending);
        Discard();
    }

    /// <summary>A file that is neither as before nor as after was changed by somebody while the change lay unfinished: it is kept under another name.</summary>
    private List<string> SetAsideForeign(WriteAheadRecord record)
    {
        var kept = new List<string>();
        foreach (var change in record.Files)
        {
            var path = layout.At(change.Path);
            if (!File.Exists(path)) continue;
            var now = Fingerprints.OfFile(path);
            if (now == change.Before || now == change.After) continue;
            disk.CreateFolder(layout.SetAside);
            var name = change.Path.Replace('/', '-');
            for (var copy = 2; File.Exists(Path.Combine(layout.SetAside, name)); copy++) name = string.Create(CultureInfo.InvariantCulture, $"{copy}-{change.Path.Replace('/', '-')}");
            disk.Copy(path, Path.Combine(layout.SetAside, name));
            disk.Sync(layout.SetAside);
            kept.Add(Layout.SetAsideName + "/" + name);
        }

        return kept;
    }

    private string Place(string root, string path)
    {
        var place = Layout.Within(root, path);
        var folder = Path.GetDirectoryName(place)!;
        if (!Directory.Exists(folder)) disk.CreateFolder(folder);
        return place;
    }

    private void SyncTree(string folder)
    {
        foreach (var inner in Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories)) disk.Sync(inner);
        disk.Sync(folder);
    }
}
