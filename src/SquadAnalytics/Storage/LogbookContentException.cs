using System.Globalization;

namespace SquadAnalytics.Storage;

/// <summary>Files of the logbook hold something that cannot be read. Nothing was changed: correct the cells named and open the logbook again.</summary>
public sealed class LogbookContentException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="problems">What cannot be read, at least one.</param>
    public LogbookContentException(IReadOnlyList<CellProblem> problems)
        : base(Describe(problems)) => Problems = [.. problems];

    /// <summary>What cannot be read: file, line, column, text, reason, and what would be accepted.</summary>
    public IReadOnlyList<CellProblem> Problems { get; }

    private static string Describe(IReadOnlyList<CellProblem> problems) => problems.Count == 1
        ? problems[0].ToString()
        : string.Create(CultureInfo.InvariantCulture, $"{problems[0]} ({problems.Count} problems in all.)");
}
