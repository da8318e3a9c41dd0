using System.Globalization;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>How a notebook's process came to its end, and what is said about it.</summary>
internal sealed record Departure(CellEnding Ending, string? Detail)
{
    // SIGKILL from outside, as a shell counts it; on Linux mostly the operating system, short of memory.
    private const int KilledFromOutside = 137;
    private const int StackOverflowOnWindows = unchecked((int)0xC00000FD);

    /// <summary>Tells endings apart: by what we did, else by what the process announced, else by its exit code and last words.</summary>
    public static Departure Of(CellEnding? endedFor, int? exitAnnounced, int exitCode, string lastWords)
    {
        if (endedFor is { } reason) return new(reason, null);
        if (exitAnnounced is { } code) return new(CellEnding.ProcessExit, code.ToString(CultureInfo.InvariantCulture));
        if (exitCode == StackOverflowOnWindows || lastWords.Contains("Stack overflow", StringComparison.Ordinal)) return new(CellEnding.StackOverflow, null);
        if (lastWords.Contains("Out of memory", StringComparison.Ordinal) || lastWords.Contains(nameof(OutOfMemoryException), StringComparison.Ordinal))
            return new(CellEnding.MemoryLimit, null);
        var words = lastWords.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var said = words.TakeWhile(static line => !line.StartsWith("at ", StringComparison.Ordinal)).Take(3);
        if (words.Length > 0) return new(CellEnding.Crash, string.Join(' ', said).TrimEnd('.'));
        return exitCode == KilledFromOutside
            ? new(CellEnding.Crash, "it was ended from outside, which mostly means that the machine ran out of memory")
            : new(CellEnding.Crash, string.Create(CultureInfo.InvariantCulture, $"exit code {exitCode}"));
    }

    /// <summary>Whether the ending is a stop for a reason of its own, whose words are ours.</summary>
    public static bool IsStop(CellEnding ending) =>
        ending is CellEnding.TimeLimit or CellEnding.MemoryLimit or CellEnding.OutputLimit or CellEnding.Cancelled;

    /// <summary>What is said about this ending.</summary>
    public string Message(KernelLimits limits) => Describe(Ending, limits, Detail);

    /// <summary>What is said about an ending.</summary>
    public static string Describe(CellEnding ending, KernelLimits limits, string? detail) => ending switch
    {
        CellEnding.TimeLimit => string.Create(CultureInfo.InvariantCulture, $"Stopped: longer than the time limit of {limits.CellTime.TotalSeconds:0.##} s."),
        CellEnding.MemoryLimit => string.Create(CultureInfo.InvariantCulture, $"Stopped: more memory than the limit of {limits.ManagedBytes / 1048576.0:0} MB (with everything else in the process {limits.ResidentBytes / 1048576.0:0} MB)."),
        CellEnding.OutputLimit => string.Create(CultureInfo.InvariantCulture, $"Stopped: more output than the limit of {limits.OutputSize:N0} characters."),
        CellEnding.Cancelled => "Stopped by request.",
        CellEnding.StackOverflow => "The call stack overflowed, which ended the notebook's process: a method calls itself without end.",
        CellEnding.ProcessExit => $"The code ended the notebook's process itself, with exit code {detail}.",
        _ => $"The notebook's process broke down: {detail}.",
    };
}
