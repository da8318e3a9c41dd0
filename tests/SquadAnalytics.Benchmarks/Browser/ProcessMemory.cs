using System.Globalization;

namespace SquadAnalytics.Benchmarks.Browser;

/// <summary>Memory of processes as Linux counts it.</summary>
internal static class ProcessMemory
{
    /// <summary>Proportional set size in bytes: pages shared by n processes count one n-th.</summary>
    public static long Proportional(int processId)
    {
        try
        {
            var line = File.ReadLines($"/proc/{processId}/smaps_rollup").First(text => text.StartsWith("Pss:", StringComparison.Ordinal));
            return long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) << 10;
        }
        catch (IOException)
        {
            return 0;
        }
    }

    /// <summary>The processes that a process has started.</summary>
    public static IReadOnlyList<int> ChildrenOf(int processId) =>
    [
        .. Directory.EnumerateDirectories("/proc").Select(Path.GetFileName).Where(name => int.TryParse(name, out _)).Select(name => int.Parse(name!, CultureInfo.InvariantCulture)).Where(id => ParentOf(id) == processId),
    ];

    private static int ParentOf(int processId)
    {
        try
        {
            // The name in brackets may hold anything; the parent is the second field behind it.
            return int.Parse(File.ReadAllText($"/proc/{processId}/stat").Split(')')[^1].Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
