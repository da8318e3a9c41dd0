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

    /// <remarks>
    /// Everywhere with a limit on the size of files; and on a tmpfs in a mount namespace of its own where the kernel lets this user have one.
    /// </remarks>
    [Fact]
    public async Task A_full_disk_and_a_read_only_disk_leave_the_logbook_intact()
    {
        if (OperatingSystem.IsWindows()) return; // It limits neither files nor mounts this way; CutShortTests fail each write there.
        string[] rights = Environment.IsPrivilegedProcess ? ["--mount"] : ["--map-root-user", "--mount"];
        string[] job = ["dotnet", "exec", typeof(LogbookDiskJob).Assembly.Location, "logbook-disk"];
        var tried = OperatingSystem.IsLinux() ? await RunAsync(["unshare", .. rights, .. job]) : null;
        var (exitCode, report) = tried is { } done && !done.Report.Contains("unshare failed", StringComparison.Ordinal) ? done : (await RunAsync(job))!.Value;
        output.WriteLine(report);
        Assert.True(exitCode == 0, report);
        Assert.Matches("limited files: [0-9]{2,} times refused with nothing changed, then accepted", report);
        Assert.Contains(report.Contains("A tmpfs cannot be mounted here", StringComparison.Ordinal) ? "limited files only" : "read-only disk: ", report, StringComparison.Ordinal);
    }

    /// <summary>Runs a command; null where there is none of that name.</summary>
    private static async Task<(int ExitCode, string Report)?> RunAsync(IReadOnlyList<string> command)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(command[0], command.Skip(1)) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var report = await process.StandardOutput.ReadToEndAsync();
            await process.WaitForExitAsync();
            return (process.ExitCode, report + await errors);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
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
