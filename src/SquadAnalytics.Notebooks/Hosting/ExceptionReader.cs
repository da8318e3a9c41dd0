using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Reporting;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>Reads from an exception what a person needs: what happened, and at which line of the cell.</summary>
internal static partial class ExceptionReader
{
    private const int LongestTrace = 20;

    /// <summary>The problem that an exception tells of.</summary>
    public static CellFault Read(Exception exception, int number, string code)
    {
        var cause = exception is TargetInvocationException or AggregateException { InnerExceptions.Count: 1 } ? exception.InnerException ?? exception : exception;
        var calls = (cause.StackTrace ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var line = calls.Select(call => LineIn(call, number)).FirstOrDefault(static found => found is not null);
        return new CellFault(Sentences.Mistake(cause))
        {
            Name = cause.GetType().Name,
            Line = line,
            Excerpt = line is { } known ? LineOf(code, known) : null,
            Trace = [.. calls.TakeWhile(static call => !call.Contains("Microsoft.CodeAnalysis.Scripting", StringComparison.Ordinal)).Where(IsCall).Take(LongestTrace)],
        };
    }

    /// <summary>One line of a cell's source, or null where it has no such line.</summary>
    public static string? LineOf(string code, int line)
    {
        var lines = code.Split('\n');
        return line >= 1 && line <= lines.Length ? lines[line - 1].TrimEnd('\r') : null;
    }

    private static bool IsCall(string call) => call.StartsWith("at ", StringComparison.Ordinal);

    private static int? LineIn(string call, int number) =>
        CellLine().Match(call) is { Success: true } match && match.Groups["cell"].Value == number.ToString(CultureInfo.InvariantCulture)
            ? int.Parse(match.Groups["line"].ValueSpan, CultureInfo.InvariantCulture)
            : null;

    [GeneratedRegex(@"cell-(?<cell>\d+)\.csx:line (?<line>\d+)", RegexOptions.CultureInvariant)]
    private static partial Regex CellLine();
}
