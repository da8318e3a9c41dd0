using SquadAnalytics.Benchmarks.Jobs;
using SquadAnalytics.Storage;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Tests.Storage;

public sealed class SafekeepingTests
{
    [Fact]
    public void Undo_brings_back_the_state_before_the_last_accept_and_undoing_twice_changes_nothing()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var before = temp.Files();
        logbook.Commit(Invented.Week);
        var after = temp.Files();
        Assert.NotEqual(before, after);

        logbook.UndoLastAccept();
        Assert.Equal(before, temp.Files());
        Assert.DoesNotContain(logbook.Squad.Sessions, session => session.Id == "s-bo-1");
        Assert.Equal("undone: week 1", logbook.LastAccept!.Description);

        logbook.UndoLastAccept();
        Assert.Equal(after, temp.Files());
        Assert.Equal("week 1", logbook.LastAccept!.Description);
    }

    [Fact]
    public void A_new_logbook_has_nothing_to_undo()
    {
        using var temp = new TempFolder();
        using var logbook = Logbook.Create(temp.Logbook, "Quay");
        Assert.Null(logbook.LastAccept);
        Assert.Throws<InvalidOperationException>(logbook.UndoLastAccept);
    }

    [Fact]
    public void A_file_changed_outside_is_noticed_before_it_would_be_overwritten()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var path = temp.At("logbook/athletes.csv");
        var edited = File.ReadAllText(path).Replace("Ada Invented", "Ada Corrected", StringComparison.Ordinal);
        File.WriteAllText(path, edited);

        var error = Assert.Throws<LogbookChangedOutsideException>(() => logbook.Commit(Invented.Week));
        Assert.Equal(["athletes.csv"], error.Files);
        Assert.Equal(edited, File.ReadAllText(path));

        logbook.Reload();
        logbook.Commit(Invented.Week);
        Assert.Equal("Ada Corrected", logbook.Squad.Athlete("a1").DisplayName);
        Assert.Equal(edited, File.ReadAllText(path));
    }

    [Fact]
    public void Undo_does_not_run_over_an_edit_made_after_the_accept()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        logbook.Commit(Invented.Week);
        var path = temp.At("logbook/set-times.csv");
        File.WriteAllText(path, File.ReadAllText(path).Replace("51.5", "51.6", StringComparison.Ordinal));
        logbook.Reload();
        var error = Assert.Throws<LogbookChangedOutsideException>(logbook.UndoLastAccept);
        Assert.Equal(["set-times.csv"], error.Files);
        Assert.Contains("51.6", File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_opener_reads_only_and_sees_the_writers_change_after_reloading()
    {
        using var temp = new TempFolder();
        using var writer = Invented.Filled(temp);
        using var reader = Logbook.Open(temp.Logbook);
        Assert.True(reader.IsReadOnly);
        Assert.Equal("another program has it open for writing", reader.ReadOnlyReason);
        Assert.Throws<LogbookReadOnlyException>(() => reader.Commit(Invented.Week));
        Assert.Throws<LogbookReadOnlyException>(reader.UndoLastAccept);

        var snapshot = reader.Squad;
        writer.Commit(Invented.Week);
        reader.Reload();
        Assert.Equal(2, snapshot.Sessions.Count);
        Assert.Equal(3, reader.Squad.Sessions.Count);
        writer.Dispose();
        using var next = Logbook.Open(temp.Logbook);
        Assert.False(next.IsReadOnly);
    }

    [Fact]
    public void Another_file_of_the_same_name_is_copied_beside_the_earlier_one()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var other = new LogbookChange("again") { ImportCopies = [new ImportCopy("week-1.csv", "other"u8.ToArray())], HeldRows = [new HeldRow("h9", HeldRowState.Refused, "week-1.csv", null, 2, []) { ImportCopy = "week-1.csv" }] };
        logbook.Commit(other);
        logbook.Commit(other);
        Assert.Equal(["week-1-2.csv", "week-1.csv"], Directory.GetFiles(logbook.ImportsFolder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal("week-1-2.csv", logbook.HeldRows[^1].ImportCopy);
        Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("climbing") { ImportCopies = [new ImportCopy("../week-1.csv", default)] }));
    }

    [Fact]
    public void A_record_that_names_a_file_outside_is_not_followed()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var path = temp.At("logbook/.previous/accept.json");
        File.WriteAllText(path, File.ReadAllText(path).Replace("\"athletes.csv\"", "\"../athletes.csv\"", StringComparison.Ordinal));
        Assert.Contains("is not the record of a change", Assert.Throws<LogbookContentException>(logbook.UndoLastAccept).Message, StringComparison.Ordinal);
        Assert.False(File.Exists(temp.At("athletes.csv")));
    }

    [Fact]
    public async Task A_reader_never_sees_half_of_a_writers_change()
    {
        using var temp = new TempFolder();
        using var writer = Logbook.Create(temp.Logbook, KilledChange.Name(0));
        writer.Commit(KilledChange.First(earlier: 50));
        var writing = Task.Run(() =>
        {
            for (var number = 1; number <= 40; number++) writer.Commit(KilledChange.Next(writer.Squad, number));
        });
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (!writing.IsCompleted)
        {
            using var reader = Logbook.Open(temp.Logbook);
            Assert.True(reader.IsReadOnly);
            var squad = reader.Squad;
            Assert.Equal([squad.Name], new[] { squad.Athlete("a1").DisplayName, squad.Blocks[0].Name, KilledChange.Name(squad.Contexts.Count), KilledChange.Name(squad.SessionsOf("a1").Count) }.Distinct());
            seen.Add(squad.Name);
        }

        await writing;
        Assert.True(seen.Count > 2, string.Join(", ", seen));
    }

    [Fact]
    public void Files_and_folders_are_readable_by_their_owner_only()
    {
        if (OperatingSystem.IsWindows()) return; // There the folder's access is inherited.
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        const UnixFileMode others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;
        var entries = Directory.EnumerateFileSystemEntries(temp.Logbook, "*", SearchOption.AllDirectories).Append(temp.Logbook).ToList();
        Assert.True(entries.Count > 30);
        foreach (var entry in entries) Assert.True((File.GetUnixFileMode(entry) & others) == UnixFileMode.None, entry);
    }
}
