using SquadAnalytics.Storage;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Tests.Storage;

/// <summary>Commits and recoveries that end in the middle.</summary>
public sealed class CutShortTests
{
    /// <summary>The process ends here: nothing after this step happens.</summary>
    private sealed class CutException : Exception;

    [Fact]
    public void Cut_short_at_any_step_a_commit_is_done_or_not_done_and_never_between()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var before = temp.Files();
        var afterFolder = CopyOf(temp, "after");
        using (var logbook = Logbook.Open(afterFolder)) logbook.Commit(Invented.Week);
        var after = TempFolder.FilesOf(afterFolder);

        var (step, rolledBack, finished) = (0, 0, 0);
        for (var cut = true; cut; step++)
        {
            var folder = CopyOf(temp, $"cut-{step}");
            cut = CommitCutAt(folder, step);
            using (var reopened = Logbook.Open(folder))
            {
                var now = TempFolder.FilesOf(folder);
                Assert.True(now.SequenceEqual(before) || now.SequenceEqual(after), $"Cut at step {step}: the files are neither as before nor as after.");
                Assert.Equal(now.SequenceEqual(before) ? "everything" : "week 1", reopened.LastAccept!.Description);
                if (reopened.Recovery?.Kind == RecoveryKind.RolledBack) rolledBack++;
                if (reopened.Recovery?.Kind == RecoveryKind.Finished) finished++;
                Assert.False(Directory.Exists(Path.Combine(folder, ".pending")));
                if (now.SequenceEqual(after))
                {
                    reopened.UndoLastAccept();
                    Assert.Equal(before, TempFolder.FilesOf(folder));
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
        using (var logbook = Logbook.Open(afterFolder)) logbook.Commit(Invented.Week);
        var after = TempFolder.FilesOf(afterFolder);

        // Cut right after the commit mark, then cut the finishing at each of its steps.
        var committed = CopyOf(temp, "committed");
        var seenMark = false;
        var disk = new Disk((what, path) =>
        {
            if (seenMark) throw new CutException();
            seenMark = what == "sync" && path.EndsWith(".pending", StringComparison.Ordinal) && File.Exists(Path.Combine(path, "commit.json"));
        });
        using (var logbook = Logbook.Open(committed, null, disk)) Assert.Throws<CutException>(() => logbook.Commit(Invented.Week));

        var step = 0;
        for (var cut = true; cut; step++)
        {
            var folder = CopyOf(temp, $"recover-{step}", committed);
            cut = OpenCutAt(folder, step);
            using (Logbook.Open(folder))
            {
                Assert.Equal(after, TempFolder.FilesOf(folder));
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
        var before = temp.Files();
        var disk = new Disk((what, path) =>
        {
            if (what == "write" && path.EndsWith("commit.json.new", StringComparison.Ordinal)) throw new IOException("No space left on device");
        });
        using var logbook = Logbook.Open(temp.Logbook, null, disk);
        var error = Assert.Throws<LogbookNotWrittenException>(() => logbook.Commit(Invented.Week));
        Assert.StartsWith("Nothing was changed, because writing failed: No space left", error.Message, StringComparison.Ordinal);
        Assert.Equal(before, temp.Files());
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
            var error = Assert.Throws<LogbookNotWrittenException>(() => logbook.Commit(Invented.Week));
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
        using (var logbook = Logbook.Open(temp.Logbook, null, disk)) Assert.Throws<CutException>(() => logbook.Commit(Invented.Week));
        var path = temp.At("logbook/set-times.csv");
        var edited = File.ReadAllText(path).Replace("48", "47", StringComparison.Ordinal);
        File.WriteAllText(path, edited);

        using var again = Logbook.Open(temp.Logbook);
        Assert.Equal(["set-aside/set-times.csv"], again.Recovery!.SetAside);
        Assert.Equal(edited, File.ReadAllText(temp.At("logbook/set-aside/set-times.csv")));
        Assert.Contains(again.Squad.Sessions, session => session.Id == "s-bo-1");
    }

    [Fact]
    public void Removing_a_person_that_was_cut_short_is_completed_by_the_next_opening()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var disk = new Disk((what, path) =>
        {
            if (what == "replace" && path.EndsWith("set-times.csv", StringComparison.Ordinal)) throw new CutException();
        });
        using (var logbook = Logbook.Open(temp.Logbook, null, disk)) Assert.Throws<CutException>(() => logbook.RemovePerson("a1"));
        Assert.Contains(Directory.EnumerateFiles(temp.Logbook, "*", SearchOption.AllDirectories), file => File.ReadAllText(file).Contains("Ada", StringComparison.Ordinal));

        Logbook.Open(temp.Logbook).Dispose();
        Assert.DoesNotContain(Directory.EnumerateFiles(temp.Logbook, "*", SearchOption.AllDirectories), file => File.ReadAllText(file).Contains("Ada", StringComparison.Ordinal));
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
            logbook.Commit(Invented.Week);
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
}
