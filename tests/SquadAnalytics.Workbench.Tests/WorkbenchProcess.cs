using System.Diagnostics;
using System.Reflection;

namespace SquadAnalytics.Workbench.Tests;

/// <summary>The built executable, run as a user runs it.</summary>
internal static class WorkbenchProcess
{
    /// <summary>Path of its assembly.</summary>
    public static readonly string Executable = Path.GetFullPath(Path.Combine(
        typeof(WorkbenchProcess).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(attribute => attribute.Key == "WorkbenchFolder").Value!,
        "SquadAnalytics.Workbench.dll"));

    /// <summary>Starts it with arguments, from a folder, with further environment variables.</summary>
    public static Process Start(string workingFolder, IReadOnlyDictionary<string, string>? environment, params IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Executable, .. arguments])
        {
            WorkingDirectory = workingFolder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, text) in environment ?? new Dictionary<string, string>()) start.Environment[name] = text;
        return Process.Start(start) ?? throw new InvalidOperationException("The workbench did not start.");
    }
}
