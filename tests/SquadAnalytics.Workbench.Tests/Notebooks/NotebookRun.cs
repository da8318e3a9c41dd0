using SquadAnalytics.Workbench.Tests.Commands;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>One run of a notebook through the executable and its child process, as a user runs it.</summary>
internal static class NotebookRun
{
    /// <summary>Runs a notebook; the run must succeed.</summary>
    /// <param name="folder">A folder for what the run writes.</param>
    /// <param name="notebook">Its name.</param>
    /// <param name="arguments">Further arguments, such as <c>--set</c>.</param>
    /// <returns>What it printed: the findings.</returns>
    public static string Of(string folder, string notebook, params IReadOnlyList<string> arguments) => Kept(Path.Combine(folder, Guid.NewGuid().ToString("N")), folder, notebook, arguments);

    /// <summary>The page that a run leaves behind.</summary>
    /// <inheritdoc cref="Of"/>
    public static string Page(string folder, string notebook, params IReadOnlyList<string> arguments)
    {
        var kept = Path.Combine(folder, Guid.NewGuid().ToString("N"));
        Kept(kept, folder, notebook, arguments);
        return File.ReadAllText(Path.Combine(kept, "report.html"));
    }

    private static string Kept(string kept, string folder, string notebook, IReadOnlyList<string> arguments)
    {
        var run = CommandRun.In(folder, ["run", notebook, .. arguments, "--out", kept]);
        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        Assert.DoesNotContain("NaN", run.Output, StringComparison.Ordinal);
        return run.Output;
    }

    /// <summary>The numbered finding that contains some words, with its notes.</summary>
    public static string Finding(string output, string words)
    {
        var lines = output.Split('\n').SkipWhile(line => !line.StartsWith("1. ", StringComparison.Ordinal)).ToList();
        var start = lines.FindIndex(line => char.IsAsciiDigit(line.FirstOrDefault('-')) && line.Contains(words, StringComparison.Ordinal));
        Assert.True(start >= 0, $"No finding says '{words}':\n{output}");
        return string.Join('\n', lines.Skip(start).Take(1).Concat(lines.Skip(start + 1).TakeWhile(line => line.StartsWith("   ", StringComparison.Ordinal))));
    }
}
