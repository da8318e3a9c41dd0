using System.Diagnostics;
using System.Runtime.InteropServices;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>The workbench as users get it.</summary>
internal static class PublishedWorkbench
{
    /// <summary>Publishes it; the path of the executable.</summary>
    public static string In(string folder)
    {
        var project = Path.Combine(Repository(), "src", "SquadAnalytics.Workbench");
        using var build = Process.Start(new ProcessStartInfo("dotnet", ["publish", project, "-c", "Release", "-r", RuntimeInformation.RuntimeIdentifier, "--self-contained", "false", "-o", folder, "-v", "q", "--nologo"]))!;
        build.WaitForExit();
        if (build.ExitCode != 0) throw new InvalidOperationException($"The workbench could not be published: code {build.ExitCode}.");
        return Path.Combine(folder, "SquadAnalytics.Workbench");
    }

    private static string Repository()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "SquadAnalytics.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("This job is run from within the repository.");
    }
}
