using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Reads the rows of one block into drafts of sessions.</summary>
internal sealed class RowReader(RawImport raw, Block block, DecimalMark mark)
{
    private const string SetAccepted = "the number of the set, from 1";
    private const int MostSets = 60;

    private readonly Dictionary<SessionTexts, SessionDraft> _drafts = [];
    private readonly HeaderLine _header = block.Header;
    private SessionDraft? _last;

    public Block Block => block;

    /// <summary>Whether a line has a readable time where this block expects one.</summary>
    public bool HasTime(SourceLine line)
    {
        if (_header.IsLong) return IsTime(line[_header[ColumnRole.Time]!.Index]);
        foreach (var column in _header.SetTimes)
        {
            if (IsTime(line[column.Index])) return true;
        }

        foreach (var column in _header.StationTimes)
        {
            if (IsTime(line[column.Index])) return true;
        }

        return false;
    }

    /// <summary>Whether the athlete of a line was met before: then it is a row for certain, and no second line of headers.</summary>
    public bool KnowsName(SourceLine line) => _header[ColumnRole.Athlete] is { } column && raw.Names.Contains(line[column.Index].Text);

    /// <summary>Whether the line has a date in the block's own column of dates.</summary>
    public bool HasDate(SourceLine line) => _header[ColumnRole.Date] is { } column && !line[column.Index].IsBlank;

    /// <summary>Reads one row.</summary>
    public void Read(SourceLine line)
    {
        var row = new ParsedRow(block, line.Number) { FirstEntry = raw.Entries.Count };
        raw.Rows.Add(row);
        if (_header.Problem is { } problem)
        {
            row.Refuse(new RowFault(null, problem, "a line above the rows such as: athlete, set 1, set 2, set 3"));
            return;
        }

        var name = Text(line, ColumnRole.Athlete, raw.Names);
        if (name == TextTable.None) row.Refuse(new RowFault(_header[ColumnRole.Athlete], "the athlete's name is missing", "a name or a code"));
        ReadEntries(line, row);
        row.EntryCount = raw.Entries.Count - row.FirstEntry;
        CheckBeyondHeader(line, row);
        if (name == TextTable.None) return;
        var draft = Draft(new SessionTexts(name, Date(line, row), Text(line, ColumnRole.Protocol, raw.Protocols), Text(line, ColumnRole.Occasion, raw.Labels)));
        draft.Rows.Add(row);
        ReadRemarks(line, row, draft);
    }

    private void ReadEntries(SourceLine line, ParsedRow row)
    {
        if (_header.IsLong)
        {
            var set = LongSet(line, row);
            Add(line, row, _header[ColumnRole.Time]!, set, _header[ColumnRole.StationName] is { } station ? Station(line[station.Index].Text) : (short)0);
            return;
        }

        foreach (var column in _header.SetTimes) Add(line, row, column, (short)column.Set, 0);
        foreach (var column in _header.StationTimes) Add(line, row, column, (short)column.Set, Station(column.Station!));
        if (_header[ColumnRole.Total] is { } total) Add(line, row, total, 0, 0);
    }

    private void Add(SourceLine line, ParsedRow row, Column column, short set, short station)
    {
        var cell = line[column.Index];
        if (cell.IsMerged)
        {
            row.Refuse(new RowFault(column, "the cell is merged with one above, so it is not clear whose time it is", "a cell of its own for each time"));
            return;
        }

        if (cell.Storage == CellStorage.Date)
        {
            row.Refuse(new RowFault(column, "the spreadsheet stored a date here", TimeEntry.Accepted));
            return;
        }

        var place = (short)Math.Min(column.Index, short.MaxValue);
        if (cell.Storage == CellStorage.DayFraction)
        {
            raw.Entries.Add(new ParsedEntry(place, set, station, EntryKind.Timed, EntryDoubt.DayFraction, 0, cell.StoredSeconds));
            return;
        }

        var entry = TimeEntry.Parse(cell.Text, mark);
        var doubt = EntryDoubt.None;
        if (entry.Kind == EntryKind.Unreadable && mark == DecimalMark.Point && TimeEntry.Parse(cell.Text, DecimalMark.Comma) is { Kind: EntryKind.Timed } withComma)
        {
            entry = withComma;
            doubt = EntryDoubt.DecimalComma;
        }

        if (entry.Kind == EntryKind.Unreadable) row.Refuse(new RowFault(column, entry.Reason!, TimeEntry.Accepted));
        else raw.Entries.Add(new ParsedEntry(place, set, station, entry.Kind, doubt, (byte)entry.Decimals, entry.Work?.Value ?? 0));
    }

    private short LongSet(SourceLine line, ParsedRow row)
    {
        var column = _header[ColumnRole.SetNumber]!;
        var text = line[column.Index].Text;
        if (int.TryParse(text, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var set) && set is >= 1 and <= MostSets) return (short)set;
        if (ColumnHeader.Read(0, text) is { Role: ColumnRole.SetTime } named) return (short)named.Set;
        row.Refuse(new RowFault(column, string.IsNullOrWhiteSpace(text) ? "the number of the set is missing" : "not a number of a set", SetAccepted));
        return 1;
    }

    private short Station(string text)
    {
        if (int.TryParse(text, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 99) return (short)number;
        var name = raw.Stations.Number(text);
        if (name == TextTable.None || name >= short.MaxValue) return 0;
        var station = (short)(-1 - name);
        if (!block.StationNames.Contains(station)) block.StationNames.Add(station);
        return station;
    }

    private int Date(SourceLine line, ParsedRow row)
    {
        if (_header[ColumnRole.Date] is not { } column || line[column.Index].IsBlank) return TextTable.None;
        var cell = line[column.Index];
        if (cell.Storage == CellStorage.DayFraction) row.Refuse(new RowFault(column, "the spreadsheet stored a time of day here", DateReading.Accepted));
        return raw.Dates.Number(cell.Text);
    }

    private int Text(SourceLine line, ColumnRole role, TextTable table) => _header[role] is { } column ? table.Number(line[column.Index].Text) : TextTable.None;

    // A cell to the right of the last header belongs to no column: it must not vanish.
    private void CheckBeyondHeader(SourceLine line, ParsedRow row)
    {
        for (var column = _header.Columns.Count; column < line.Cells.Count; column++)
        {
            if (!line.Cells[column].IsBlank) row.Refuse(new RowFault(new Column(column, "", ColumnRole.Ignored), "the cell stands beyond the last column header", "as many cells as there are headers"));
        }
    }

    private void ReadRemarks(SourceLine line, ParsedRow row, SessionDraft draft)
    {
        if (_header[ColumnRole.Place] is null && _header[ColumnRole.Timer] is null && _header[ColumnRole.Temperature] is null) return;
        double? temperature = null;
        if (_header[ColumnRole.Temperature] is { } column && !line[column.Index].IsBlank)
        {
            if (double.TryParse(line[column.Index].Text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var degrees) && degrees is >= -30 and <= 60) temperature = degrees;
            else row.Refuse(new RowFault(column, "not a temperature", "degrees Celsius from -30 to 60"));
        }

        draft.Remarks ??= new SessionRemarks(Remark(line, ColumnRole.Place), Remark(line, ColumnRole.Timer), temperature);
    }

    private string? Remark(SourceLine line, ColumnRole role) => _header[role] is { } column && !line[column.Index].IsBlank ? line[column.Index].Text.Trim() : null;

    private SessionDraft Draft(SessionTexts texts)
    {
        if (!_header.IsLong) return Start(texts);
        if (_last is not null && _last.Texts == texts) return _last;
        return _last = _drafts.TryGetValue(texts, out var known) ? known : _drafts[texts] = Start(texts);
    }

    private SessionDraft Start(SessionTexts texts)
    {
        var draft = new SessionDraft(block, texts);
        raw.Drafts.Add(draft);
        return draft;
    }

    private static bool IsTime(SourceCell cell) => cell.Storage == CellStorage.DayFraction || TimeEntry.Parse(cell.Text, DecimalMark.Comma).Kind == EntryKind.Timed;
}
