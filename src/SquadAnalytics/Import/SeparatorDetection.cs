namespace SquadAnalytics.Import;

/// <summary>Finds the sign between the cells of a text file.</summary>
internal static class SeparatorDetection
{
    private const int LinesLookedAt = 60;

    // In this order where nothing else tells them apart: a comma may also be a decimal mark or part of "Last, First".
    private static readonly char[] Candidates = ['\t', ';', '|', ','];

    /// <summary>The separator under which a line with column headers appears first; where there is none, the one that splits most lines alike.</summary>
    /// <param name="lines">Reads the file with a separator.</param>
    public static char Find(Func<char, IEnumerable<SourceLine>> lines)
    {
        var starts = Candidates.Select(candidate => (Separator: candidate, Lines: lines(candidate).Take(LinesLookedAt).ToList())).ToList();
        var withHeader = starts.Where(start => start.Lines.Any(line => HeaderLine.TryRead(line) is not null)).ToList();
        return withHeader.Count > 0
            ? withHeader.MaxBy(start => start.Lines.Max(line => HeaderLine.TryRead(line)?.ColumnsUnderstood ?? 0)).Separator
            : starts.MaxBy(start => Alike(start.Lines)).Separator;
    }

    // How many lines share the commonest number of cells, of two or more.
    private static int Alike(List<SourceLine> lines) =>
        lines.Where(line => line.Cells.Count > 1).GroupBy(line => line.Cells.Count).Select(group => group.Count()).DefaultIfEmpty(0).Max();
}
