using SquadAnalytics.Internals;
using SquadAnalytics.Storage.Safekeeping;
using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Storage;

/// <summary>A squad's data: a folder of plain CSV files with a <c>datapackage.json</c> that describes them.</summary>
/// <remarks>One program writes at a time; others read. A change is one transaction over all its files. Not for use by several threads at once.</remarks>
public sealed partial class Logbook : IDisposable
{
    private readonly Layout _layout;
    private readonly Disk _disk;
    private readonly TimeProvider _time;
    private FolderLock? _lock;
    private LogbookContent _content;
    private Dictionary<string, string> _hashes;

    private Logbook(Layout layout, Disk disk, TimeProvider time, FolderLock? held, string? readOnlyReason, LogbookRecovery? recovery)
    {
        _layout = layout;
        _disk = disk;
        _time = time;
        _lock = held;
        ReadOnlyReason = readOnlyReason;
        Recovery = recovery;
        (_content, _hashes) = Load();
    }

    /// <summary>The logbook's folder.</summary>
    public string Folder => _layout.Folder;

    /// <summary>Everything known of the squad, as last read or committed. The value itself never changes; a commit puts a new one in its place.</summary>
    public Squad Squad => _content.Squad;

    /// <summary>Health notes; out of reports and exports by default.</summary>
    public IReadOnlyList<HealthNote> HealthNotes => _content.HealthNotes;

    /// <summary>Imported rows that are refused or await a decision.</summary>
    public IReadOnlyList<HeldRow> HeldRows => _content.HeldRows;

    /// <summary>What was written to places outside the folder; see <see cref="RecordExport"/>.</summary>
    public IReadOnlyList<LogbookExport> Exports => _content.Exports;

    /// <summary>Whether nothing can be written: another program has the logbook open, or the folder cannot be written.</summary>
    public bool IsReadOnly => ReadOnlyReason is not null;

    /// <summary>Why nothing can be written, or null.</summary>
    public string? ReadOnlyReason { get; private set; }

    /// <summary>What opening did with a change that had been cut short, or null where there was none.</summary>
    public LogbookRecovery? Recovery { get; }

    /// <summary>The folder in which kept reports belong, each a file or a folder of its own.</summary>
    public string ReportsFolder => _layout.Reports;

    /// <summary>Folder of the notebooks that belong to this logbook.</summary>
    public string NotebooksFolder => _layout.At(Layout.NotebooksName);

    /// <summary>The folder that holds copies of imported files.</summary>
    public string ImportsFolder => _layout.Imports;

    /// <summary>SHA-256 over the tables that analyses read, as 64 hexadecimal digits.</summary>
    /// <remarks>
    /// The SHA-256 of the lines that <c>sha256sum</c> prints for these files ordered by name; health notes, held rows and the list of exports are left out,
    /// since no analysis reads them. Source: FIPS 180-4.
    /// </remarks>
    public string Fingerprint => Fingerprints.Together(LogbookTables.All.Where(table => table.IsData && _hashes.ContainsKey(table.File)).Select(table => KeyValuePair.Create(table.File, _hashes[table.File])));

    /// <summary>Makes a logbook in a folder that is new or empty.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="squadName">Name of the squad.</param>
    /// <param name="time">The clock for the times of accepts, or null for the system's.</param>
    /// <exception cref="IOException">The folder holds something already.</exception>
    /// <exception cref="LogbookReadOnlyException">The folder cannot be written.</exception>
    /// <exception cref="LogbookNotWrittenException">Writing failed, for example on a full disk.</exception>
    public static Logbook Create(string folder, string squadName, TimeProvider? time = null) => Create(folder, squadName, time, new Disk());

    /// <summary>Opens a logbook. Finishes or takes back a change that was cut short; opens for reading only where another program writes or the folder cannot be written.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="time">The clock for the times of accepts, or null for the system's.</param>
    /// <exception cref="DirectoryNotFoundException">There is no logbook in the folder.</exception>
    /// <exception cref="LogbookContentException">A file holds something that cannot be read; the exception names each cell.</exception>
    public static Logbook Open(string folder, TimeProvider? time = null) => Open(folder, time, new Disk());

    internal static Logbook Create(string folder, string squadName, TimeProvider? time, Disk disk)
    {
        var layout = new Layout(Path.GetFullPath(Require.Text(folder)));
        var content = LogbookContent.Empty(Require.Text(squadName));
        disk.CreateFolder(layout.Folder);
        var held = FolderLock.TryTake(layout, out var reason) ?? throw new LogbookReadOnlyException(reason!);
        try
        {
            new Transaction(layout, disk).Recover();
            if (Directory.EnumerateFileSystemEntries(layout.Folder).Any(entry => entry != layout.Lock)) throw new IOException($"Folder {layout.Folder} is not empty. Name a new folder for the logbook.");
            var files = LogbookTables.Write(content, before: null);
            var record = new WriteAheadRecord("new logbook", (time ?? TimeProvider.System).GetUtcNow(), [.. files.Select(file => new FileChange(file.Key, null, Fingerprints.Of(file.Value)))], PreviousState.Dropped, []);
            Write(new Transaction(layout, disk), layout, record, Bytes(files));
            return new Logbook(layout, disk, time ?? TimeProvider.System, held, null, null);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    internal static Logbook Open(string folder, TimeProvider? time, Disk disk)
    {
        var layout = new Layout(Path.GetFullPath(Require.Text(folder)));
        if (!File.Exists(layout.At(DataPackage.File)) && !File.Exists(layout.CommitMark)) throw new DirectoryNotFoundException($"There is no logbook in {layout.Folder}: it has no {DataPackage.File}.");
        var held = FolderLock.TryTake(layout, out var reason);
        try
        {
            var recovery = held is null ? null : new Transaction(layout, disk).Recover();
            return new Logbook(layout, disk, time ?? TimeProvider.System, held, reason, recovery);
        }
        catch
        {
            held?.Dispose();
            throw;
        }
    }

    /// <summary>Makes a folder for a kept report, readable by its owner only.</summary>
    /// <param name="name">Its name: a plain one; it gets a number where there is such a folder already.</param>
    /// <returns>The folder's full path.</returns>
    /// <exception cref="LogbookReadOnlyException">The logbook is open for reading only.</exception>
    public string NewReportFolder(string name)
    {
        RequireWritable();
        if (!Layout.Belongs($"{Layout.ReportsName}/{Require.Text(name)}", [Layout.ReportsName])) throw new ArgumentException($"'{name}' is not a plain folder name.", nameof(name));
        var path = Path.Combine(_layout.Reports, name);
        for (var number = 2; Path.Exists(path); number++) path = Path.Combine(_layout.Reports, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name}-{number}"));
        _disk.CreateFolder(path);
        return path;
    }

    /// <summary>Reads the files again, to see what was changed outside or by the program that writes.</summary>
    /// <exception cref="LogbookContentException">A file holds something that cannot be read; what was read before stays.</exception>
    public void Reload() => (_content, _hashes) = Load();

    /// <summary>Gives the logbook free for others.</summary>
    public void Dispose()
    {
        _lock?.Dispose();
        _lock = null;
        ReadOnlyReason ??= "it was closed";
    }

    /// <summary>Name of the squad and how much there is.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Squad.Name}: {Squad.Athletes.Count} athletes, {Squad.Sessions.Count} sessions in {Folder}");

    private (LogbookContent Content, Dictionary<string, string> Hashes) Load()
    {
        var files = LogbookFiles.Read(_layout);
        return (LogbookTables.Read(files.Contents), new Dictionary<string, string>(files.Hashes, StringComparer.Ordinal));
    }
}
