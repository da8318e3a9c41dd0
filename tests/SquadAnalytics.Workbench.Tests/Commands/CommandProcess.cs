using System.Diagnostics;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>The program as users start it: another process, in a folder of its own.</summary>
internal sealed class CommandProcess
{
    public required int ExitCode { get; init; }

    public required string Results { get; init; }

    public required string Progress { get; init; }

    public static async Task<CommandProcess> RunAsync(string folder, string? language, params string[] arguments)
    {
        using var process = Start(folder, language, arguments);
        var results = process.StandardOutput.ReadToEndAsync();
        var progress = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return new CommandProcess { ExitCode = process.ExitCode, Results = await results, Progress = await progress };
    }

    public static Process Start(string folder, string? language, params string[] arguments)
    {
        var host = Path.GetFullPath(Path.Combine(System.Runtime.InteropServices.RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet"));
        var start = new ProcessStartInfo(host, ["exec", Path.Combine(AppContext.BaseDirectory, "SquadAnalytics.Workbench.dll"), .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (language is not null) start.Environment["LC_ALL"] = start.Environment["LANG"] = language;
        return Process.Start(start)!;
    }
}
