using System.Diagnostics;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>One run of the built executable, as a user runs it.</summary>
internal sealed record CommandRun(int ExitCode, string Output, string Errors)
{
    private const string German = "de_DE.UTF-8";

    /// <summary>Runs it in a folder and waits for its end.</summary>
    public static CommandRun In(string folder, params IReadOnlyList<string> arguments) => In(folder, German, arguments);

    /// <summary>Runs it in a folder, on a machine of a given language, and waits for its end.</summary>
    public static CommandRun In(string folder, string language, IReadOnlyList<string> arguments)
    {
        using var process = Start(folder, language, arguments);
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CommandRun(process.ExitCode, output, errors.Result);
    }

    /// <summary>Starts it in a folder.</summary>
    public static Process Start(string folder, params IReadOnlyList<string> arguments) => Start(folder, German, arguments);

    private static Process Start(string folder, string language, IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "SquadAnalytics.Workbench.dll"), .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        start.Environment["LC_ALL"] = start.Environment["LANG"] = language;
        return Process.Start(start)!;
    }
}
