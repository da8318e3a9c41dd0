using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Where a kept table comes from.</summary>
internal static class Provenance
{
    /// <summary>The commit of the working tree, marked where files were changed since.</summary>
    public static string Commit()
    {
        var commit = Git("rev-parse", "--short", "HEAD");
        return commit.Length == 0 ? "unknown" : Git("status", "--porcelain", "--untracked-files=no").Length == 0 ? commit : commit + " with changes";
    }

    /// <summary>System, processors and runtime.</summary>
    public static string Machine() => string.Create(CultureInfo.InvariantCulture,
        $"{RuntimeInformation.OSDescription}, {RuntimeInformation.ProcessArchitecture}, {Environment.ProcessorCount} processors, {RuntimeInformation.FrameworkDescription}");

    private static string Git(params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("git", arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false });
            var output = process?.StandardOutput.ReadToEnd().Trim() ?? "";
            process?.WaitForExit();
            return process?.ExitCode == 0 ? output : "";
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return "";
        }
    }
}
