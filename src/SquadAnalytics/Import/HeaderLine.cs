namespace SquadAnalytics.Import;

/// <summary>The line above a block that names its columns.</summary>
internal sealed class HeaderLine
{
    private readonly Dictionary<ColumnRole, Column> _single;

    private HeaderLine(int line, IReadOnlyList<Column> columns, bool isAssumed)
    {
        Line = line;
        Columns = columns;
        IsAssumed = isAssumed;
        _single = columns.Where(column => column.Role is not (ColumnRole.Ignored or ColumnRole.SetTime or ColumnRole.StationTime)).DistinctBy(column => column.Role).ToDictionary(column => column.Role);
        SetTimes = [.. columns.Where(column => column.Role == ColumnRole.SetTime)];
        StationTimes = [.. columns.Where(column => column.Role == ColumnRole.StationTime)];
        IsLong = _single.ContainsKey(ColumnRole.Time) && SetTimes.Count == 0 && StationTimes.Count == 0;
        Problem = FindProblem();
    }

    /// <summary>Its line number.</summary>
    public int Line { get; }

    /// <summary>All columns in their order.</summary>
    public IReadOnlyList<Column> Columns { get; }

    /// <summary>Whether the file has no such line and its columns were only assumed.</summary>
    public bool IsAssumed { get; }

    /// <summary>Wide files: the columns of set times, in their order.</summary>
    public IReadOnlyList<Column> SetTimes { get; }

    /// <summary>Wide files: the columns of station times, in their order.</summary>
    public IReadOnlyList<Column> StationTimes { get; }

    /// <summary>Whether each row is one set (or one station of one set) rather than one session.</summary>
    public bool IsLong { get; }

    /// <summary>Why nothing below can be read, or null.</summary>
    public string? Problem { get; }

    /// <summary>How many columns have a meaning.</summary>
    public int ColumnsUnderstood => Columns.Count(column => column.Role != ColumnRole.Ignored);

    /// <summary>The first column with a role, or null.</summary>
    public Column? this[ColumnRole role] => _single.GetValueOrDefault(role);

    /// <summary>Stands where rows have no line above them that names their columns.</summary>
    public static HeaderLine Missing(int line) => new(line, [], false);

    /// <summary>Reads a line as headers; null where it is something else.</summary>
    public static HeaderLine? TryRead(SourceLine line)
    {
        if (line.Cells.Count < 2) return null;
        var columns = line.Cells.Select((cell, index) => ColumnHeader.Read(index, cell.Text)).ToList();
        IgnoreNumbersThatAreNoHeaders(columns);
        var hasTimes = columns.Any(column => column.Role is ColumnRole.SetTime or ColumnRole.StationTime or ColumnRole.Time);
        if (!hasTimes) return null;
        if (columns.Any(column => column.Role == ColumnRole.Athlete)) return new HeaderLine(line.Number, columns, false);

        // Named set columns with nothing above the names: the first column holds them.
        var named = columns.Count(column => column.Role is ColumnRole.SetTime or ColumnRole.StationTime && !ColumnHeader.IsBareNumber(column.Header));
        if (named < 2 || columns[0].Role != ColumnRole.Ignored) return null;
        columns[0] = columns[0] with { Role = ColumnRole.Athlete };
        return new HeaderLine(line.Number, columns, false);
    }

    /// <summary>The columns of a block without headers, as a person would read them: the athlete, then the sets.</summary>
    /// <returns>Null where the line does not look like that: one text, then two or more times.</returns>
    public static HeaderLine? Assume(SourceLine line)
    {
        var filled = line.Cells.TakeWhile((cell, index) => index == 0 || !cell.IsBlank).ToList();
        if (filled.Count < 3 || filled[0].IsBlank || TimeEntry.Parse(filled[0].Text, DecimalMark.Comma).Kind != EntryKind.Unreadable) return null;
        if (filled.Skip(1).Any(cell => cell.Storage == CellStorage.Plain && TimeEntry.Parse(cell.Text, DecimalMark.Comma).Kind == EntryKind.Unreadable)) return null;
        return new HeaderLine(line.Number, [
            new Column(0, "athlete (assumed)", ColumnRole.Athlete),
            .. filled.Skip(1).Select((_, index) => new Column(index + 1, FormattableString.Invariant($"set {index + 1} (assumed)"), ColumnRole.SetTime) { Set = index + 1 }),
        ], true);
    }

    // Bare numbers are headers only where they count 1, 2, 3 from the left.
    private static void IgnoreNumbersThatAreNoHeaders(List<Column> columns)
    {
        var bare = columns.Where(column => column.Role == ColumnRole.SetTime && ColumnHeader.IsBareNumber(column.Header)).ToList();
        if (bare.Select(column => column.Set).SequenceEqual(Enumerable.Range(1, bare.Count)) && bare.Count != 1) return;
        foreach (var column in bare) columns[column.Index] = column with { Role = ColumnRole.Ignored };
    }

    private string? FindProblem()
    {
        if (Columns.Count == 0) return "no line above names the columns";
        var twice = Columns.Where(column => column.Role is ColumnRole.SetTime or ColumnRole.StationTime or ColumnRole.Time or ColumnRole.SetNumber or ColumnRole.Total)
            .GroupBy(column => (column.Role, column.Set, Station: column.Station is null ? "" : NameKey.Of(column.Station)))
            .FirstOrDefault(group => group.Count() > 1);
        if (twice is not null) return $"the columns '{twice.First().Header}' and '{twice.Last().Header}' of line {Line} mean the same";
        if (IsLong && this[ColumnRole.SetNumber] is null) return $"line {Line} names a column of times, but none with the number of the set";
        return null;
    }
}
