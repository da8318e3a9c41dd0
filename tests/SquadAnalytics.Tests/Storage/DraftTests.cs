using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public sealed class DraftTests
{
    [Fact]
    public void Each_cell_is_on_disk_when_typed_and_the_latest_text_counts()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var draft = logbook.StartDraft();
        draft.Type("", "test date", "2031-03-11");
        draft.Type("a1", "set 1", "62.4");
        draft.Type("a1", "set 1", "61.4");
        draft.Type("a2", "set 1", "1:02, \"late\"\nline");

        // Not closed, as after a power cut: another reader sees every cell.
        using var reader = Logbook.Open(temp.Logbook);
        var found = Assert.Single(reader.Drafts);
        Assert.Equal(draft.Id, found.Id);
        Assert.Equal(["2031-03-11", "61.4", "1:02, \"late\"\nline"], found.Cells.Select(cell => cell.Text));
        Assert.Equal("61.4", found.Text("a1", "set 1"));
        Assert.Throws<LogbookReadOnlyException>(() => found.Type("a1", "set 2", "62"));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    public void A_last_line_that_was_cut_short_loses_no_earlier_cell_and_no_later_one(int missing)
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var draft = logbook.StartDraft();
        draft.Type("a1", "set 1", "62.4");
        draft.Type("a1", "set 2", "63.4");
        var path = Assert.Single(Directory.GetFiles(temp.At("logbook/drafts")));
        var bytes = File.ReadAllBytes(path);
        File.WriteAllBytes(path, bytes[..^missing]);

        var recovered = Assert.Single(logbook.Drafts);
        recovered.Type("a1", "set 3", "64.4");
        var again = Assert.Single(logbook.Drafts);
        Assert.Equal("62.4", again.Text("a1", "set 1"));
        Assert.Equal("64.4", again.Text("a1", "set 3"));
        Assert.Equal(missing == 1 ? "63.4" : null, again.Text("a1", "set 2"));
        Assert.Equal(missing == 1 ? 0 : 1, again.UnreadableLines);
    }

    [Fact]
    public void An_accepted_draft_is_gone_with_its_session_in_and_undo_brings_it_back()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var draft = logbook.StartDraft();
        draft.Type("a2", "set 1", "49");
        logbook.Commit(new LogbookChange("typed session") { Sessions = [Invented.BoLater(1)], AcceptedDraftId = draft.Id });
        Assert.Empty(logbook.Drafts);
        logbook.UndoLastAccept();
        Assert.Equal("49", Assert.Single(logbook.Drafts).Text("a2", "set 1"));
        Assert.Equal(2, logbook.Squad.Sessions.Count);
    }

    [Fact]
    public void A_discarded_draft_is_gone_and_an_unknown_one_is_refused()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var (first, second) = (logbook.StartDraft(), logbook.StartDraft());
        Assert.NotEqual(first.Id, second.Id);
        logbook.DiscardDraft(first.Id);
        Assert.Equal(second.Id, Assert.Single(logbook.Drafts).Id);
        Assert.Throws<ArgumentException>(() => logbook.DiscardDraft("../athletes"));
        Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("typed session") { AcceptedDraftId = "../athletes" }));
    }
}
