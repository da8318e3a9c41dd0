using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Storage.Safekeeping;
using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Storage;

public sealed partial class Logbook
{
    /// <summary>The last accepted change, which <see cref="UndoLastAccept"/> would undo, or null where there is none.</summary>
    public LogbookAccept? LastAccept => File.Exists(_layout.PreviousRecord) && WriteAheadRecord.FromFile(_layout.PreviousRecord) is var record ? new LogbookAccept(record.Description, record.At) : null;

    /// <summary>Accepts a change: all of it is in the files when this returns, or nothing.</summary>
    /// <param name="change">The change.</param>
    /// <exception cref="LogbookReadOnlyException">The logbook is open for reading only.</exception>
    /// <exception cref="LogbookChangedOutsideException">A file was changed by another program since it was read.</exception>
    /// <exception cref="ProtocolInUseException">A protocol version that sessions used would change.</exception>
    /// <exception cref="ArgumentException">The change refers to something that is not there, or breaks a rule of the tables.</exception>
    /// <exception cref="LogbookNotWrittenException">Writing failed, for example on a full disk.</exception>
    public void Commit(LogbookChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        RequireWritable();
        var names = change.ImportCopies.ToDictionary(copy => copy.Name, FreeName, StringComparer.Ordinal);
        var after = _content.After(change with { HeldRows = [.. change.HeldRows.Select(row => row.ImportCopy is { } copy && names.TryGetValue(copy, out var name) && name != copy ? row with { ImportCopy = name } : row)] });
        var contents = Bytes(LogbookTables.Write(after, _content));
        foreach (var copy in change.ImportCopies) contents[Layout.ImportsName + "/" + names[copy.Name]] = copy.Content;
        Accept(change.Description, after, contents, change.AcceptedDraftId is { } draft ? [KnownDraft(draft)] : [], PreviousState.Replaced, []);
    }

    /// <summary>Leaves a session out of analyses. It is kept and can be taken back.</summary>
    /// <param name="sessionId">The session's id.</param>
    /// <param name="reason">Why.</param>
    public void VoidSession(string sessionId, string reason) =>
        Commit(new LogbookChange($"left {Words(sessionId)} out: {Require.Text(reason)}") { Sessions = [Session(sessionId) with { VoidReason = reason }] });

    /// <summary>Takes a session that was left out back into analyses.</summary>
    /// <param name="sessionId">The session's id.</param>
    public void TakeBackVoid(string sessionId) =>
        Commit(new LogbookChange($"counted {Words(sessionId)} again") { Sessions = [Session(sessionId) with { VoidReason = null }] });

    private string Words(string sessionId)
    {
        var session = Session(sessionId);
        return string.Create(CultureInfo.InvariantCulture, $"{Squad.Athlete(session.AthleteId).Code}'s session of {session.Date:yyyy-MM-dd}");
    }

    /// <summary>Goes back to the state before the last accept. The state undone is kept in its place, so that undoing twice changes nothing.</summary>
    /// <exception cref="InvalidOperationException">There is nothing to undo.</exception>
    /// <exception cref="LogbookChangedOutsideException">A file that the last accept wrote was changed since by another program.</exception>
    public void UndoLastAccept()
    {
        RequireWritable();
        if (!File.Exists(_layout.PreviousRecord)) throw new InvalidOperationException("There is no accepted change to undo.");
        var record = WriteAheadRecord.FromFile(_layout.PreviousRecord);
        var edited = record.Files.Where(change => HashOf(change.Path) != change.After).Select(change => change.Path).ToList();
        if (edited.Count > 0) throw new LogbookChangedOutsideException(edited);
        var contents = record.Files.Where(change => change.Before is not null).ToDictionary(change => change.Path, change => (ReadOnlyMemory<byte>)File.ReadAllBytes(Layout.Within(_layout.Previous, change.Path)), StringComparer.Ordinal);
        var removed = record.Files.Where(change => change.Before is null).Select(change => change.Path).ToList();
        var undone = new LogbookAccept(record.Description, record.At).TakenBack;
        Accept(undone ?? LogbookAccept.Undone + record.Description, after: null, contents, removed, PreviousState.Replaced, []);
    }

    /// <summary>Runs one transaction and takes over its result.</summary>
    /// <param name="description">The change in words.</param>
    /// <param name="after">The content afterwards, or null to read it from the files.</param>
    /// <param name="contents">New bytes by path.</param>
    /// <param name="removed">Paths of files to delete, kept with the previous state.</param>
    /// <param name="previous">What becomes of the kept state.</param>
    /// <param name="erased">Paths to delete without keeping them.</param>
    private void Accept(string description, LogbookContent? after, Dictionary<string, ReadOnlyMemory<byte>> contents, IReadOnlyList<string> removed, PreviousState previous, IReadOnlyList<string> erased)
    {
        CheckNotChangedOutside();
        var written = contents.Select(file => new FileChange(file.Key, HashOf(file.Key), Fingerprints.Of(file.Value.Span))).Where(change => change.Before != change.After).ToList();
        var deleted = removed.Select(path => new FileChange(path, HashOf(path), null)).Where(change => change.Before is not null);
        var record = new WriteAheadRecord(description, _time.GetUtcNow(), [.. written, .. deleted], previous, erased);
        var changed = written.ToDictionary(change => change.Path, change => contents[change.Path], StringComparer.Ordinal);
        try
        {
            Write(new Transaction(_layout, _disk), _layout, record, changed);
        }
        catch (LogbookNotWrittenException) when (File.Exists(_layout.CommitMark))
        {
            Dispose();
            ReadOnlyReason = "an accepted change could not be finished; open the logbook again";
            throw;
        }

        if (after is null)
        {
            Reload();
            return;
        }

        _content = after;
        foreach (var change in written.Where(change => LogbookTables.Files.Contains(change.Path))) _hashes[change.Path] = change.After!;
    }

    private static void Write(Transaction transaction, Layout layout, WriteAheadRecord record, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> contents)
    {
        try
        {
            transaction.Run(record, contents);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(layout.CommitMark)) throw new LogbookNotWrittenException($"The change is safe on disk and will be finished when the logbook is opened again: {error.Message}", error);
            TryDiscard(transaction);
            throw new LogbookNotWrittenException($"Nothing was changed, because writing failed: {error.Message}", error);
        }
    }

    private static void TryDiscard(Transaction transaction)
    {
        try
        {
            transaction.Discard();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // What is left of it has no commit mark, so that the next opening takes it back.
        }
    }

    private void CheckNotChangedOutside()
    {
        var changed = LogbookTables.Files.Where(file => HashOf(file) != _hashes.GetValueOrDefault(file)).ToList();
        if (changed.Count > 0) throw new LogbookChangedOutsideException(changed);
    }

    private string? HashOf(string path) => File.Exists(_layout.At(path)) ? Fingerprints.OfFile(_layout.At(path)) : null;

    private void RequireWritable()
    {
        if (ReadOnlyReason is not null) throw new LogbookReadOnlyException(ReadOnlyReason);
    }

    private Session Session(string id) =>
        Squad.Sessions.FirstOrDefault(session => session.Id == id) ?? throw new ArgumentException($"There is no session '{id}' in the logbook.", nameof(id));

    /// <summary>A copy's name, with a number where another file of that name was imported before.</summary>
    private string FreeName(ImportCopy copy)
    {
        var name = copy.Name;
        if (name != Path.GetFileName(name) || name.IndexOfAny(['/', '\\', ':']) >= 0 || name.StartsWith('.')) throw new ArgumentException($"'{name}' is not a plain file name.", nameof(copy));
        var hash = Fingerprints.Of(copy.Content.Span);
        for (var number = 2; HashOf($"{Layout.ImportsName}/{name}") is { } taken && taken != hash; number++)
            name = string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(copy.Name)}-{number}{Path.GetExtension(copy.Name)}");
        return name;
    }
}
