using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Splits a sheet into blocks (title lines, one line of headers, rows) and reads their rows.</summary>
internal sealed class BlockReader(RawImport raw, SourceSheet sheet, DecimalMark mark, Func<string, bool> isKnownName)
{
    // Title lines before a header: a club's letterhead is longer than one line.
    private const int LinesAhead = 12;

    private readonly Queue<SourceLine> _ahead = new();
    private RowReader? _rows;
    private BlockTitle _title = BlockTitle.None;
    private bool _titleIsOpen;
    private int _lastLine;

    /// <summary>Reads the whole sheet.</summary>
    public void Read()
    {
        if (sheet.Name is { } name && DateReading.Find(name, out _) is not null) StartTitle(name);
        using var lines = sheet.Lines().GetEnumerator();
        while (TryNext(lines, out var line))
        {
            ReadLine(line, lines);
            _lastLine = line.Number;
        }
    }

    private void ReadLine(SourceLine line, IEnumerator<SourceLine> lines)
    {
        if (_rows is not null && !_titleIsOpen && _rows.KnowsName(line)) _rows.Read(line);
        else if (ReadHeader(line, lines) is { } header) StartBlock(header);
        else if (_rows?.HasTime(line) != true && IsTitle(line, lines)) AddTitle(line);
        else
        {
            // Rows below a second title keep the columns of the block above, but not its date.
            if (_rows is null) StartBlock(HeaderLine.Assume(line) ?? HeaderLine.Missing(line.Number));
            else if (_titleIsOpen) StartBlock(_rows.Block.Header, line.Number);
            _rows!.Read(line);
        }
    }

    /// <summary>The headers that begin with a line, on one line or two; null where it is something else.</summary>
    private HeaderLine? ReadHeader(SourceLine line, IEnumerator<SourceLine> lines)
    {
        var next = Ahead(lines, 1) > 0 ? _ahead.Peek() : null;
        var pair = next is null ? null : HeaderPair.TryRead(line, next);
        var header = pair ?? HeaderLine.TryRead(line);
        if (header is null) return null;
        raw.TitleAndHeaderLines++;
        if (next is not null && (pair is not null || HeaderPair.IsUnits(line, next)))
        {
            _ahead.Dequeue();
            raw.TitleAndHeaderLines++;
        }

        return header;
    }

    private void StartBlock(HeaderLine header, int? line = null)
    {
        _rows = new RowReader(raw, new Block(sheet, header, _title, line ?? header.Line), mark);
        _titleIsOpen = false;
        var ignored = header.Columns.Where(column => column.Role == ColumnRole.Ignored && column.Header.Length > 0).Select(column => $"'{column.Header}'").ToList();
        if (ignored.Count > 0) raw.Notes.Add($"{_rows.Block.InWords}: not read: {string.Join(", ", ignored)}.");
    }

    private void StartTitle(string text)
    {
        _title = BlockTitle.None.With(text);
        _titleIsOpen = true;
        raw.Notes.Add($"{sheet.File}, sheet '{sheet.Name}': the sheet's name was read as a title.");
    }

    private void AddTitle(SourceLine line)
    {
        // A further heat of the same sheet needs no code of its own.
        _title = (_titleIsOpen ? _title : BlockTitle.None with { Sheet = _title.Sheet }).With(line.Whole);
        _titleIsOpen = true;
        if (SheetCode.Find(line.Whole, out _, out var isDamaged) is null && isDamaged)
            raw.Notes.Add(string.Create(CultureInfo.InvariantCulture, $"{sheet.File}, line {line.Number}: the sheet's code was copied wrongly (its last character checks the others), so it says nothing: '{Shorten(line.Whole)}'."));
        raw.TitleAndHeaderLines++;
        raw.Notes.Add(string.Create(CultureInfo.InvariantCulture, $"{sheet.File}{(sheet.Name is null ? "" : $", sheet '{sheet.Name}'")}, line {line.Number}: read as a title: '{Shorten(line.Whole)}'."));
    }

    // A title says a date in words of its own, or stands above a header. A lone name under a header is an athlete without times.
    private bool IsTitle(SourceLine line, IEnumerator<SourceLine> lines)
    {
        var texts = line.Texts.ToList();
        if (texts.Count > 6 || texts.Any(text => TimeEntry.Parse(text, DecimalMark.Comma).Kind is EntryKind.Timed or EntryKind.NotFinished or EntryKind.NotStarted)) return false;
        var inBlock = _rows is not null && !_titleIsOpen;
        if (inBlock && isKnownName(texts[0])) return false;
        if (texts.Count <= 2 && DateReading.Find(line.Whole, out _) is not null && (!inBlock || texts.Count == 1 || !_rows!.HasDate(line))) return true;
        return inBlock && _lastLine == line.Number - 1 ? NextIsHeader(lines, 1) : NextIsHeader(lines, LinesAhead);
    }

    private bool NextIsHeader(IEnumerator<SourceLine> lines, int ahead)
    {
        // One line more, because headers may stand on two.
        Ahead(lines, ahead + 1);
        SourceLine? before = null;
        foreach (var next in _ahead.Take(ahead + 1))
        {
            if (before is not null && HeaderPair.TryRead(before, next) is not null) return true;
            if (ahead-- == 0) return false;
            if (HeaderLine.TryRead(next) is not null) return true;
            before = next;
            if (next.Texts.Any(text => TimeEntry.Parse(text, DecimalMark.Comma).Kind == EntryKind.Timed)) return false;
        }

        return false;
    }

    /// <summary>Looks some lines ahead and says how many there are.</summary>
    private int Ahead(IEnumerator<SourceLine> lines, int count)
    {
        while (_ahead.Count < count && lines.MoveNext()) _ahead.Enqueue(lines.Current);
        return Math.Min(count, _ahead.Count);
    }

    private bool TryNext(IEnumerator<SourceLine> lines, out SourceLine line)
    {
        if (_ahead.TryDequeue(out line!)) return true;
        if (!lines.MoveNext()) return false;
        line = lines.Current;
        return true;
    }

    private static string Shorten(string text) => text.Length <= 80 ? text : $"{text[..77]}...";
}
