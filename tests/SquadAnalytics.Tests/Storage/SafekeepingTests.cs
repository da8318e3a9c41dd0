using SquadAnalytics.Benchmarks.Jobs;
using SquadAnalytics.Storage;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Tests.Storage;

public sealed class SafekeepingTests
{
    private static readonly LogbookChange Week = new("week 1")
    {
        Sessions = [Invented.BoLater(1)],
        Contexts = [new DayContext("a2", Invented.Day.AddDays(7)) { Minutes = 75 }],
        ImportCopies = [new ImportCopy("week-2.csv", "Name,Set 1\nBo,49\n"u8.ToArray())],
    };

    /// <summary>The process ends here: nothing after this step happens.</summary>
    private sealed class CutException : Exception;

    [Fact]
    public void Cut_short_at_any_step_a_commit_is_done_or_not_done_and_never_between()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var before = Files(temp.Logbook);
        var afterFolder = CopyOf(temp, "after");
        using (var logbook = Logbook.Open(afterFolder)) logbook.Commit(Week);
        var after = Files(afterFolder);

        var (step, rolledBack, finished) = (0, 0, 0);
        for (var cut = true; cut; step++)
        {
            var folder = CopyOf(temp, $"cut-{step}");
            cut = CommitCutAt(folder, step);
            using (var reopened = Logbook.Open(folder))
            {
                var now = Files(folder);
                Assert.True(now.SequenceEqual(before) || now.SequenceEqual(after), $"Cut at step {step}: the files are neither as before nor as after.");
                Assert.Equal(now.SequenceEqual(before) ? "everything" : "week 1", reopened.LastAccept!.Description);
                if (reopened.Recovery?.Kind == RecoveryKind.RolledBack) rolledBack++;
                if (reopened.Recovery?.Kind == RecoveryKind.Finished) finished++;
                Assert.False(Directory.Exists(Path.Combine(folder, ".pending")));
                if (now.SequenceEqual(after))
                {
                    reopened.UndoLastAccept();
                    Assert.Equal(before, Files(folder));
                }
            }

            Directory.Delete(folder, recursive: true);
        }

        // Every write, copy, rename and flush of the transaction was cut once, on both sides of the commit mark.
        Assert.True(rolledBack > 10 && finished > 5, $"{step} steps, {rolledBack} rolled back, {finished} finished");
    }

    [Fact]
    public void Recovery_that_is_itself_cut_short_is_completed_by_the_next_opening()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var afterFolder = CopyOf(temp, "after");
        using (var logbook = Logbook.Open(afterFolder)) logbook.Commit(Week);
        var after = Files(afterFolder);

        // Cut right after the commit mark, then cut the finishing at each of its steps.
        var committed = CopyOf(temp, "committed");
        var seenMark = false;
        var disk = new Disk((what, path) =>
        {
            if (seenMark) throw new CutException();
            seenMark = what == "sync" && path.EndsWith(".pending", StringComparison.Ordinal) && File.Exists(Path.Combine(path, "commit.json"));
        });
        using (var logbook = Logbook.Open(committed, null, disk)) Assert.Throws<CutException>(() => logbook.Commit(Week));

        var step = 0;
        for (var cut = true; cut; step++)
        {
            var folder = CopyOf(temp, $"recover-{step}", committed);
            cut = OpenCutAt(folder, step);
            using (Logbook.Open(folder))
            {
                Assert.Equal(after, Files(folder));
            }

            Directory.Delete(folder, recursive: true);
        }

        Assert.True(step > 8, $"{step} steps");
    }

    [Fact]
    public void A_disk_that_fails_before_the_commit_mark_leaves_everything_as_it_was()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var before = Files(temp.Logbook);
        var disk = new Disk((what, path) =>
        {
            if (what == "write" && path.EndsWith("commit.json.new", StringComparison.Ordinal)) throw new IOException("No space left on device");
        });
        using var logbook = Logbook.Open(temp.Logbook, null, disk);
        var error = Assert.Throws<LogbookNotWrittenException>(() => logbook.Commit(Week));
        Assert.StartsWith("Nothing was changed, because writing failed: No space left", error.Message, StringComparison.Ordinal);
        Assert.Equal(before, Files(temp.Logbook));
        Assert.False(Directory.Exists(temp.At("logbook/.pending")));
        Assert.False(logbook.IsReadOnly);
    }

    [Fact]
    public void A_disk_that_fails_after_the_commit_mark_says_so_and_the_next_opening_finishes()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var disk = new Disk((what, path) =>
        {
            if (what == "replace" && path.EndsWith("set-times.csv", StringComparison.Ordinal)) throw new IOException("Input/output error");
        });
        using (var logbook = Logbook.Open(temp.Logbook, null, disk))
        {
            var error = Assert.Throws<LogbookNotWrittenException>(() => logbook.Commit(Week));
            Assert.StartsWith("The change is safe on disk and will be finished", error.Message, StringComparison.Ordinal);
            Assert.True(logbook.IsReadOnly);
        }

        using var again = Logbook.Open(temp.Logbook);
        Assert.Equal(new LogbookRecovery(RecoveryKind.Finished, "week 1", []).Kind, again.Recovery!.Kind);
        Assert.Contains(again.Squad.Sessions, session => session.Id == "s-bo-1");
    }

    [Fact]
    public void A_file_edited_while_a_change_lay_unfinished_is_set_aside_and_not_lost()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var disk = new Disk((what, path) =>
        {
            if (what == "replace" && path.EndsWith("set-times.csv", StringComparison.Ordinal)) throw new CutException();
        });
        using (var logbook = Logbook.Open(temp.Logbook, null, disk)) Assert.Throws<CutException>(() => logbook.Commit(Week));
        var path = temp.At("logbook/set-times.csv");
        var edited = File.ReadAllText(path).Replace("48", "47", StringComparison.Ordinal);
        File.WriteAllText(path, edited);

        using var again = Logbook.Open(temp.Logbook);
        Assert.Equal(["set-aside/set-times.csv"], again.Recovery!.SetAside);
        Assert.Equal(edited, File.ReadAllText(temp.At("logbook/set-aside/set-times.csv")));
        Assert.Contains(again.Squad.Sessions, session => session.Id == "s-bo-1");
    }

    [Fact]
    public void Undo_brings_back_the_state_before_the_last_accept_and_undoing_twice_changes_nothing()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var before = Files(temp.Logbook);
        logbook.Commit(Week);
        var after = Files(temp.Logbook);
        Assert.NotEqual(before, after);

        logbook.UndoLastAccept();
        Assert.Equal(before, Files(temp.Logbook));
        Assert.DoesNotContain(logbook.Squad.Sessions, session => session.Id == "s-bo-1");
        Assert.Equal("undone: week 1", logbook.LastAccept!.Description);

        logbook.UndoLastAccept();
        Assert.Equal(after, Files(temp.Logbook));
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

        var error = Assert.Throws<LogbookChangedOutsideException>(() => logbook.Commit(Week));
        Assert.Equal(["athletes.csv"], error.Files);
        Assert.Equal(edited, File.ReadAllText(path));

        logbook.Reload();
        logbook.Commit(Week);
        Assert.Equal("Ada Corrected", logbook.Squad.Athlete("a1").DisplayName);
        Assert.Equal(edited, File.ReadAllText(path));
    }

    [Fact]
    public void Undo_does_not_run_over_an_edit_made_after_the_accept()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        logbook.Commit(Week);
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
        Assert.Throws<LogbookReadOnlyException>(() => reader.Commit(Week));
        Assert.Throws<LogbookReadOnlyException>(reader.UndoLastAccept);

        var snapshot = reader.Squad;
        writer.Commit(Week);
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

    private static bool CommitCutAt(string folder, int step)
    {
        var left = step;
        var disk = new Disk((what, path) =>
        {
            if (left-- > 0) return;
            if (what == "write" && !File.Exists(path)) File.WriteAllText(path, "torn");
            throw new CutException();
        });
        using var logbook = Logbook.Open(folder, null, disk);
        try
        {
            logbook.Commit(Week);
            return false;
        }
        catch (CutException)
        {
            return true;
        }
    }

    private static bool OpenCutAt(string folder, int step)
    {
        var left = step;
        try
        {
            Logbook.Open(folder, null, new Disk((_, _) =>
            {
                if (left-- <= 0) throw new CutException();
            })).Dispose();
            return false;
        }
        catch (CutException)
        {
            return true;
        }
    }

    private static string CopyOf(TempFolder temp, string name, string? from = null)
    {
        var (source, target) = (from ?? temp.Logbook, temp.At(name));
        Directory.CreateDirectory(target);
        foreach (var folder in Directory.EnumerateDirectories(source, "*", SearchOption.AllDirectories)) Directory.CreateDirectory(Path.Combine(target, Path.GetRelativePath(source, folder)));
        foreach (var file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories)) File.Copy(file, Path.Combine(target, Path.GetRelativePath(source, file)));
        return target;
    }

    /// <summary>Names and hashes of everything that a person sees in the folder.</summary>
    private static List<string> Files(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(folder, file))
            .Where(name => !name.StartsWith('.'))
            .Order(StringComparer.Ordinal)
            .Select(name => $"{name} {Fingerprints.OfFile(Path.Combine(folder, name))}")];
}
