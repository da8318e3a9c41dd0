using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Benchmarks.Jobs;
using SquadAnalytics.Storage;
using Xunit.Abstractions;

namespace SquadAnalytics.Tests.Storage;

/// <summary>Samples of the long counts, with a fixed seed.</summary>
public sealed class LogbookJobTests(ITestOutputHelper output)
{
    [Fact]
    public void A_program_killed_while_it_accepts_leaves_the_logbook_before_or_after_and_never_between()
    {
        var tally = LogbookKillsJob.Kill(kills: 6, seed: 1, Path.GetTempPath());
        output.WriteLine(tally.ToString());
        Assert.True(tally.Between == 0, tally.ToString());
        Assert.Equal(6, tally.Finished + tally.RolledBack + tally.Whole);
    }

    /// <remarks>Mounts a tmpfs in a mount namespace of its own: as root, or elsewhere where the kernel lets users have namespaces.</remarks>
    [Fact]
    public async Task A_full_disk_and_a_read_only_disk_leave_the_logbook_intact()
    {
        if (!OperatingSystem.IsLinux()) return; // There is no tmpfs to fill.
        var start = new ProcessStartInfo("unshare") { RedirectStandardOutput = true, RedirectStandardError = true };
        string[] rights = Environment.IsPrivilegedProcess ? ["--mount"] : ["--map-root-user", "--mount"];
        foreach (var argument in (string[])[.. rights, "dotnet", "exec", typeof(LogbookDiskJob).Assembly.Location, "logbook-disk"]) start.ArgumentList.Add(argument);
        using var job = Process.Start(start)!;
        var reading = job.StandardError.ReadToEndAsync();
        var report = await job.StandardOutput.ReadToEndAsync();
        await job.WaitForExitAsync();
        var errors = await reading;
        output.WriteLine(report + errors);
        if (errors.Contains("unshare failed", StringComparison.Ordinal) || job.ExitCode == LogbookDiskJob.CannotMount) return; // This machine lets nobody mount.
        Assert.True(job.ExitCode == 0, report + errors);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Files_and_messages_are_the_same_in_every_culture(string culture)
    {
        using var temp = new TempFolder();
        var (fingerprint, message) = Written(temp.At("invariant"));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo(culture);
            Assert.Equal((fingerprint, message), Written(temp.At(culture)));
            using var logbook = Logbook.Open(temp.At("invariant"));
            Assert.Equal(50.1, logbook.Squad.Sessions[0].TimesSeconds[0]);
            Assert.Equal(-3.5, logbook.Squad.Sessions[0].TemperatureCelsius);
            Assert.Equal(Invented.Everything.Contexts, logbook.Squad.Contexts);
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }

    private static (string Fingerprint, string Message) Written(string folder)
    {
        using var logbook = Logbook.Create(folder, "Quay");
        logbook.Commit(Invented.Everything);
        var path = Path.Combine(folder, "set-times.csv");
        var text = File.ReadAllText(path);
        File.WriteAllText(path, text.Replace("50.1", "\"50,1\"", StringComparison.Ordinal));
        var message = Assert.Throws<LogbookContentException>(logbook.Reload).Message;
        File.WriteAllText(path, text);
        return (logbook.Fingerprint, message);
    }
}
