using System.Diagnostics;
using System.Text.Json;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public sealed class LogbookTests
{
    [Fact]
    public void What_was_committed_is_read_back_exactly()
    {
        using var temp = new TempFolder();
        string fingerprint;
        using (var written = Invented.Filled(temp)) fingerprint = written.Fingerprint;
        using var logbook = Logbook.Open(temp.Logbook);

        Assert.Equal(Text(Invented.Everything), Text(new LogbookChange("everything")
        {
            Athletes = logbook.Squad.Athletes,
            Protocols = logbook.Squad.Protocols,
            Sessions = logbook.Squad.Sessions,
            Contexts = logbook.Squad.Contexts,
            Events = logbook.Squad.Events,
            Blocks = logbook.Squad.Blocks,
            AgeGroups = logbook.Squad.AgeGroups,
            WeightClasses = logbook.Squad.WeightClasses,
            HealthNotes = logbook.HealthNotes,
            HeldRows = logbook.HeldRows,
            ImportCopies = [new ImportCopy("week-1.csv", File.ReadAllBytes(Path.Combine(logbook.ImportsFolder, "week-1.csv")))],
        }));
        Assert.Equal("Quay Boxing (invented)", logbook.Squad.Name);
        Assert.Equal(["report to /media/stick/report.html: a1"], logbook.Exports.Select(export => $"{export.Kind} to {export.Destination}: {string.Join(", ", export.AthleteIds)}"));
        Assert.Equal(fingerprint, logbook.Fingerprint);

        static string Text(LogbookChange change) => JsonSerializer.Serialize(change);
    }

    [Fact]
    public void A_commit_replaces_items_of_the_same_id_and_leaves_the_others()
    {
        using var temp = new TempFolder();
        using (var logbook = Invented.Filled(temp))
        {
            logbook.Commit(new LogbookChange("Bo renamed") { Athletes = [Invented.Bo with { DisplayName = "Bo Invented" }], Sessions = [Invented.BoLater(1)], RemovedHeldRowIds = ["h1"], RemovedBlockIds = ["b1"] });
        }

        using var again = Logbook.Open(temp.Logbook);
        Assert.Equal(["Ada Invented", "Bo Invented"], again.Squad.Athletes.Select(athlete => athlete.DisplayName));
        Assert.Equal(["s1", "s2", "s-bo-1"], again.Squad.Sessions.Select(session => session.Id));
        Assert.Equal(["h2"], again.HeldRows.Select(row => row.Id));
        Assert.Equal(["b2"], again.Squad.Blocks.Select(block => block.Id));
    }

    [Fact]
    public void A_void_session_is_kept_with_its_reason_and_can_be_taken_back()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        logbook.VoidSession("s2", "timer dropped the watch");
        logbook.Reload();
        Assert.Equal("timer dropped the watch", logbook.Squad.Sessions.Single(session => session.Id == "s2").VoidReason);
        logbook.TakeBackVoid("s2");
        logbook.Reload();
        Assert.False(logbook.Squad.Sessions.Single(session => session.Id == "s2").IsVoid);
    }

    [Fact]
    public void The_same_test_twice_is_refused_until_one_is_void()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var twin = SquadAnalytics.Session.FromTimes("s3", "a2", Invented.Day, Invented.Quay, 40, 41, 42, 43);
        var error = Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("twin") { Sessions = [twin] }));
        Assert.Contains("'s2' and 's3' are the same test", error.Message, StringComparison.Ordinal);
        logbook.VoidSession("s2", "typed twice");
        logbook.Commit(new LogbookChange("twin") { Sessions = [twin] });
        Assert.Throws<ArgumentException>(() => logbook.TakeBackVoid("s2"));
        logbook.Commit(new LogbookChange("second test of the day") { Sessions = [logbook.Squad.Sessions.Single(session => session.Id == "s2") with { VoidReason = null, Occasion = 2 }] });
        Assert.Equal(3, logbook.Squad.Sessions.Count);
    }

    [Fact]
    public void A_protocol_that_was_used_only_takes_further_bands()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var changed = new Protocol("quay-v1", "Quay circuit", Invented.Quay.Stations, 4, new Seconds(100)) { Bands = Invented.Quay.Bands };
        Assert.Throws<ProtocolInUseException>(() => logbook.Commit(new LogbookChange("faster clock") { Protocols = [changed] }));
        Assert.Throws<ProtocolInUseException>(() => logbook.Commit(new LogbookChange("fewer bands") { Protocols = [Invented.Quay with { Bands = [] }] }));
        Assert.Throws<ProtocolInUseException>(() => logbook.Commit(new LogbookChange("gone") { RemovedProtocolIds = ["quay-v1"] }));

        var more = Invented.Quay with { Bands = [.. Invented.Quay.Bands, new PerformanceBand("new steady", new Seconds(230), new Seconds(270), new DateOnly(2032, 1, 1))] };
        logbook.Commit(new LogbookChange("bands of 2032") { Protocols = [more], RemovedProtocolIds = ["quay-v1-j"] });
        logbook.Reload();
        Assert.Equal(3, logbook.Squad.Sessions[0].Protocol.Bands.Count);
        Assert.Single(logbook.Squad.Protocols);
    }

    [Fact]
    public void A_change_that_names_nobody_known_is_refused_and_nothing_is_written()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var before = logbook.Fingerprint;
        Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("stray") { Contexts = [new DayContext("a9", Invented.Day)] }));
        Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("stray") { Events = [new AthleteEvent("e9", "a9", Invented.Day, EventKind.Bout)] }));
        Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("not a number") { Contexts = [new DayContext("a1", Invented.Day) { SleepHours = double.NaN }] }));
        Assert.Throws<ArgumentException>(() => logbook.Commit(new LogbookChange("no group name") { Athletes = [Invented.Ada with { Groups = [new GroupMembership(" ", Invented.Day)] }] }));
        logbook.Reload();
        Assert.Equal(before, logbook.Fingerprint);
    }

    /// <remarks>GNU coreutils 9: sha256sum.</remarks>
    [Fact]
    public void The_fingerprint_is_what_sha256sum_gives_for_the_tables_that_analyses_read()
    {
        if (!OperatingSystem.IsLinux()) return; // The command belongs to that system.
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        const string command = "sha256sum $(ls *.csv | grep -vE '^(health|held|export)' | LC_ALL=C sort) | sha256sum";
        using var shell = Process.Start(new ProcessStartInfo("sh", ["-c", command]) { WorkingDirectory = temp.Logbook, RedirectStandardOutput = true })!;
        Assert.Equal(logbook.Fingerprint + "  -", shell.StandardOutput.ReadToEnd().Trim());

        var before = logbook.Fingerprint;
        logbook.RecordExport("report", "/media/stick/again.html", []);
        logbook.Commit(new LogbookChange("a note") { HealthNotes = [new HealthNote("n2", "a2", Invented.Day, "sore thumb")] });
        Assert.Equal(before, logbook.Fingerprint);
        logbook.VoidSession("s2", "typed twice");
        Assert.NotEqual(before, logbook.Fingerprint);
    }

    [Fact]
    public void A_folder_that_holds_something_does_not_become_a_logbook()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.At("shopping.txt"), "tape");
        Assert.Throws<IOException>(() => Logbook.Create(temp.Path, "Quay"));
        Assert.Throws<DirectoryNotFoundException>(() => Logbook.Open(temp.Path));
    }
}
