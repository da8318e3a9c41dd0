using System.Diagnostics;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>One run of the built executable, as a user runs it.</summary>
internal sealed record CommandRun(int ExitCode, string Output, string Errors)
{
    /// <summary>Runs it in a folder and waits for its end.</summary>
    public static CommandRun In(string folder, params IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "SquadAnalytics.Workbench.dll"), .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        start.Environment["LANG"] = "de_DE.UTF-8";
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CommandRun(process.ExitCode, output, errors.Result);
    }
}
