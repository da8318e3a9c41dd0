using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Benchmarks;

/// <summary>Runs the R and Python scripts of the Peers folder and reads the seconds that they print.</summary>
internal static class PeerScript
{
    /// <summary>Runs a script and returns what it wrote; its messages go to our error stream.</summary>
    /// <exception cref="InvalidOperationException">The interpreter is not installed, or the script failed.</exception>
    public static string Run(string interpreter, string script, string dataFolder, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(interpreter) { RedirectStandardOutput = true, UseShellExecute = false };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Peers", script));
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        start.Environment["PEER_DATA"] = dataFolder;
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{interpreter} did not start.");
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Console.Write(output);
        return process.ExitCode == 0 ? output : throw new InvalidOperationException($"{interpreter} {script} ended with code {process.ExitCode}.");
    }

    /// <summary>All numbers that stand behind a word in a script's output, in order: <c>fit_s 1.30</c>.</summary>
    public static IReadOnlyList<double> Numbers(string output, string word) =>
        [.. Regex.Matches(output, $@"\b{Regex.Escape(word)} (-?[0-9.]+)").Select(match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture))];
}
