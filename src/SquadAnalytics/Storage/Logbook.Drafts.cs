using System.Globalization;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Storage;

public sealed partial class Logbook
{
    /// <summary>Sessions that are being typed, oldest first; those of a program that was cut short included.</summary>
    public IReadOnlyList<SessionDraft> Drafts => !Directory.Exists(_layout.Drafts)
        ? []
        : [.. Directory.EnumerateFiles(_layout.Drafts, "*" + SessionDraft.Extension).Order(StringComparer.Ordinal).Select(path => SessionDraft.Open(path, _time, () => ReadOnlyReason))];

    /// <summary>Begins to type a session. Accept it by a change that names it in <see cref="LogbookChange.AcceptedDraftId"/>.</summary>
    /// <exception cref="LogbookReadOnlyException">The logbook is open for reading only.</exception>
    public SessionDraft StartDraft()
    {
        RequireWritable();
        _disk.CreateFolder(_layout.Drafts);
        var id = _time.GetUtcNow().UtcDateTime.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        var free = id;
        for (var copy = 2; File.Exists(DraftPath(free)); copy++) free = string.Create(CultureInfo.InvariantCulture, $"{id}-{copy}");
        _disk.Write(DraftPath(free), ReadOnlyMemory<byte>.Empty);
        _disk.Sync(_layout.Drafts);
        return SessionDraft.Open(DraftPath(free), _time, () => ReadOnlyReason);
    }

    /// <summary>Deletes a draft that shall not become a session.</summary>
    /// <param name="id">The draft's id.</param>
    public void DiscardDraft(string id)
    {
        RequireWritable();
        _disk.Delete(_layout.At(KnownDraft(id)));
        _disk.Sync(_layout.Drafts);
    }

    private string DraftPath(string id) => Path.Combine(_layout.Drafts, id + SessionDraft.Extension);

    private string KnownDraft(string id) =>
        Drafts.Any(draft => draft.Id == id) ? $"{Layout.DraftsName}/{id}{SessionDraft.Extension}" : throw new ArgumentException($"There is no draft '{id}' in the logbook.", nameof(id));
}
