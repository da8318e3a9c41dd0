using System.Text;
using SquadAnalytics.Storage.Removal;
using SquadAnalytics.Storage.Safekeeping;
using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Storage;

public sealed partial class Logbook
{
    /// <summary>
    /// Erases a person: from the tables, the texts of others, the kept state before the last accept (which is dropped, so that nothing can be undone),
    /// drafts, held rows, copies of imports, kept reports that mention them, and what cells of notebooks showed of them. This cannot be undone.
    /// </summary>
    /// <remarks>
    /// A kept report or an import copy that mentions the person by id, code, name or alias goes as a whole. Blocks of the person alone go too.
    /// The space on the disk is freed, not overwritten: whoever reads the raw disk may still find traces.
    /// </remarks>
    /// <param name="athleteId">The athlete's id.</param>
    /// <returns>What was erased, and the exports that have to be deleted where they are.</returns>
    /// <exception cref="ArgumentException">There is no such athlete.</exception>
    /// <exception cref="LogbookReadOnlyException">The logbook is open for reading only.</exception>
    public RemovalReport RemovePerson(string athleteId)
    {
        RequireWritable();
        var athlete = Squad.Athletes.FirstOrDefault(member => member.Id == athleteId) ?? throw new ArgumentException($"There is no athlete '{athleteId}' in the logbook.", nameof(athleteId));
        var mention = new Mention(athlete);
        var unreachable = Exports.Where(export => export.Shows(athleteId)).ToList();
        var found = new[] { Layout.ReportsName, Layout.ImportsName, Layout.SetAsideName }.Select(name => Erasure.Files(_layout, name, mention)).ToList();
        var erased = found.SelectMany(files => files.Mentioning).ToList();
        var before = _content;
        var after = Erasure.Content(before, athlete);
        var contents = Bytes(LogbookTables.Write(after, before));
        foreach (var draft in Drafts)
        {
            var cells = Erasure.Cells(draft, mention);
            if (cells.Count < draft.Cells.Count || draft.UnreadableLines > 0) contents[KnownDraft(draft.Id)] = SessionDraft.FileOf(cells);
        }

        // A notebook that shows the person loses what its cells showed; one whose code or prose names them is for a person to look at.
        var notebooks = Erasure.Files(_layout, Layout.NotebooksName, mention);
        var named = new List<string>();
        foreach (var path in notebooks.Mentioning)
        {
            if (NotebookOutputs.Without(File.ReadAllBytes(_layout.At(path))) is not { } bare || mention.In(Path.GetFileNameWithoutExtension(path)) || mention.In(Encoding.UTF8.GetString(bare))) named.Add(path);
            else contents[path] = bare;
        }

        var rewritten = contents.Keys.Where(path => path.Contains('/', StringComparison.Ordinal)).ToList();
        Accept("a person removed", after, contents, [], PreviousState.Dropped, erased);
        return new RemovalReport(
            athleteId,
            before.Squad.Sessions.Count - after.Squad.Sessions.Count,
            before.HeldRows.Count - after.HeldRows.Count,
            [.. erased, .. rewritten],
            [.. found.SelectMany(files => files.Unsearched), .. notebooks.Unsearched, .. named],
            unreachable);
    }
}
