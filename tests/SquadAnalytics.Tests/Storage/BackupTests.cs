using System.IO.Compression;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public sealed class BackupTests
{
    [Fact]
    public void A_backup_restores_tables_reports_drafts_imports_and_the_kept_state()
    {
        using var temp = new TempFolder();
        string fingerprint;
        using (var logbook = Invented.Filled(temp))
        {
            logbook.StartDraft().Type("a2", "set 1", "49");
            Directory.CreateDirectory(Path.Combine(logbook.ReportsFolder, "run"));
            File.WriteAllText(Path.Combine(logbook.ReportsFolder, "run", "report.html"), "<p>kept</p>");
            Directory.CreateDirectory(logbook.NotebooksFolder);
            File.WriteAllText(Path.Combine(logbook.NotebooksFolder, "own.ipynb"), "{}");
            logbook.VoidSession("s2", "typed twice");
            fingerprint = logbook.Fingerprint;
            logbook.Backup(temp.At("club.zip"));
            Assert.Equal("backup", logbook.Exports[^1].Kind);
            Assert.Throws<ArgumentException>(() => logbook.Backup(temp.At("logbook/club.zip")));
        }

        using var restored = Logbook.Restore(temp.At("club.zip"), temp.At("restored"));
        Assert.Equal(fingerprint, restored.Fingerprint);
        Assert.Equal("49", Assert.Single(restored.Drafts).Text("a2", "set 1"));
        Assert.Equal("<p>kept</p>", File.ReadAllText(Path.Combine(restored.ReportsFolder, "run", "report.html")));
        restored.UndoLastAccept();
        Assert.DoesNotContain(restored.Squad.Sessions, session => session.IsVoid);
        Assert.Throws<IOException>(() => Logbook.Restore(temp.At("club.zip"), temp.At("restored")));
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(temp.At("club.zip")));
    }

    [Theory]
    [InlineData("../outside.csv")]
    [InlineData("reports/../../outside.csv")]
    [InlineData("/etc/outside.csv")]
    [InlineData("reports\\..\\outside.csv")]
    [InlineData("reports//outside.csv")]
    [InlineData("C:/outside.csv")]
    [InlineData("reports/C:outside.csv")]
    [InlineData("reports/./outside.csv")]
    [InlineData("..")]
    [InlineData("other/outside.csv")]
    [InlineData(".pending/commit.json")]
    public void A_path_that_leads_elsewhere_is_refused_and_nothing_is_left(string name)
    {
        using var temp = new TempFolder();
        var zip = BackupWith(temp, archive => Write(archive, name, "x"));
        var error = Assert.Throws<InvalidDataException>(() => Logbook.Restore(zip, temp.At("restored")));
        Assert.Contains($"'{name}' does not belong", error.Message, StringComparison.Ordinal);
        Assert.Equal(["club.zip", "logbook"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_link_in_a_zip_becomes_a_plain_file_and_nothing_is_written_through_it()
    {
        using var temp = new TempFolder();
        var outside = Directory.CreateDirectory(temp.At("outside")).FullName;
        var zip = BackupWith(temp, archive =>
        {
            var link = archive.CreateEntry("reports/link");
            link.ExternalAttributes = Convert.ToInt32("120777", 8) << 16; // As zip marks a symbolic link on Unix.
            using var target = new StreamWriter(link.Open());
            target.Write(outside);
        });
        using (var restored = Logbook.Restore(zip, temp.At("restored")))
        {
            var file = new FileInfo(Path.Combine(restored.ReportsFolder, "link"));
            Assert.Null(file.LinkTarget);
            Assert.Equal(outside, File.ReadAllText(file.FullName));
        }

        using (var archive = ZipFile.Open(zip, ZipArchiveMode.Update)) Write(archive, "reports/link/taken.html", "x");
        Assert.ThrowsAny<IOException>(() => Logbook.Restore(zip, temp.At("through")));
        Assert.False(Directory.Exists(temp.At("through")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(outside));
    }

    [Fact]
    public void A_backup_holds_nothing_that_a_link_in_the_folder_leads_to()
    {
        if (OperatingSystem.IsWindows()) return; // Making a link needs rights there.
        using var temp = new TempFolder();
        Directory.CreateDirectory(temp.At("outside"));
        File.WriteAllText(temp.At("outside/private.txt"), "private");
        using (var logbook = Invented.Filled(temp))
        {
            Directory.CreateDirectory(logbook.ReportsFolder);
            Directory.CreateSymbolicLink(Path.Combine(logbook.ReportsFolder, "folder"), temp.At("outside"));
            File.CreateSymbolicLink(Path.Combine(logbook.ReportsFolder, "file.txt"), temp.At("outside/private.txt"));
            File.WriteAllText(Path.Combine(logbook.ReportsFolder, "own.txt"), "own");
            logbook.Backup(temp.At("club.zip"));
        }

        using var archive = ZipFile.OpenRead(temp.At("club.zip"));
        Assert.Equal(["reports/own.txt"], archive.Entries.Select(entry => entry.FullName).Where(name => name.StartsWith("reports/", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_zip_that_unpacks_to_far_more_than_its_size_is_refused_and_nothing_is_left()
    {
        using var temp = new TempFolder();
        var zip = BackupWith(temp, archive =>
        {
            using var entry = archive.CreateEntry("reports/zeros.html", CompressionLevel.SmallestSize).Open();
            var zeros = new byte[1 << 20];
            for (var mebibyte = 0; mebibyte < 70; mebibyte++) entry.Write(zeros);
        });
        Assert.True(new FileInfo(zip).Length < 200_000);
        Assert.Contains("unpacks to more", Assert.Throws<InvalidDataException>(() => Logbook.Restore(zip, temp.At("restored"))).Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(temp.At("restored")));
        Assert.Throws<InvalidDataException>(() => Logbook.Restore(zip, temp.At("restored"), null, mostBytes: 1000));
    }

    [Fact]
    public void A_zip_with_a_bad_table_or_without_tables_or_cut_off_is_refused_and_nothing_is_left()
    {
        using var temp = new TempFolder();
        var zip = BackupWith(temp, archive =>
        {
            archive.GetEntry("events.csv")!.Delete();
            Write(archive, "events.csv", "event_id,athlete_id,day,kind,cleared_date\ne1,a2,gestern,bout,\n");
        });
        Assert.Contains("events.csv, line 2", Assert.Throws<LogbookContentException>(() => Logbook.Restore(zip, temp.At("restored"))).Message, StringComparison.Ordinal);

        using (var archive = ZipFile.Open(temp.At("empty.zip"), ZipArchiveMode.Create)) Write(archive, "reports/x.html", "x");
        Assert.Contains("no datapackage.json", Assert.Throws<InvalidDataException>(() => Logbook.Restore(temp.At("empty.zip"), temp.At("restored"))).Message, StringComparison.Ordinal);

        File.WriteAllBytes(temp.At("cut.zip"), File.ReadAllBytes(zip)[..2000]);
        Assert.Throws<InvalidDataException>(() => Logbook.Restore(temp.At("cut.zip"), temp.At("restored")));
        Assert.False(Directory.Exists(temp.At("restored")));
    }

    private static string BackupWith(TempFolder temp, Action<ZipArchive> change)
    {
        var zip = temp.At("club.zip");
        using (var logbook = Invented.Filled(temp)) logbook.Backup(zip);
        using var archive = ZipFile.Open(zip, ZipArchiveMode.Update);
        change(archive);
        return zip;
    }

    private static void Write(ZipArchive archive, string name, string text)
    {
        using var entry = new StreamWriter(archive.CreateEntry(name).Open());
        entry.Write(text);
    }
}
