using System.Globalization;
using System.Xml;

namespace SquadAnalytics.Import;

/// <summary>Reads the rows of one sheet.</summary>
internal sealed class SheetXml(IReadOnlyList<string> texts, NumberFormats formats, bool countsFrom1904)
{
    // Nobody writes so many columns; a cell far to the right would make every row as wide.
    private const int MostColumns = 1000;
    private const string Accepted = "a sheet with its rows in order and at most 1000 columns";

    /// <summary>All rows that are not blank.</summary>
    public List<SourceLine> Read(Stream stream)
    {
        List<SourceLine> lines = [];
        using var xml = XmlReader.Create(stream, SharedTexts.XmlSettings);
        var number = 0;
        var merged = new MergedCells();
        while (xml.Read())
        {
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "mergeCell" }) merged.Add(xml.GetAttribute("ref"));
            if (xml is not { NodeType: XmlNodeType.Element, LocalName: "row" }) continue;
            var stated = xml.GetAttribute("r");
            var next = stated is null ? number + 1 : int.TryParse(stated, NumberStyles.None, CultureInfo.InvariantCulture, out var parsed) ? parsed : 0;
            if (next <= number) throw new UnreadableSourceException("the rows of a sheet are out of order", Accepted);
            number = next;
            var line = new SourceLine(number, ReadRow(xml));
            if (!line.IsBlank) lines.Add(line);
        }

        merged.FillDown(lines);
        return lines;
    }

    private List<SourceCell> ReadRow(XmlReader xml)
    {
        List<SourceCell> cells = [];
        if (xml.IsEmptyElement) return cells;
        var end = xml.Depth;
        var column = -1;
        while (xml.Read() && !(xml.NodeType == XmlNodeType.EndElement && xml.Depth == end))
        {
            if (xml is not { NodeType: XmlNodeType.Element, LocalName: "c" }) continue;
            column = xml.GetAttribute("r") is { } reference ? Column(reference) : column + 1;
            var cell = ReadCell(xml);
            if (cell.IsBlank) continue;
            if (column is < 0 or >= MostColumns) throw new UnreadableSourceException("a sheet has more than 1000 columns", Accepted);
            while (cells.Count <= column) cells.Add(new SourceCell(""));
            cells[column] = cell;
        }

        return cells;
    }

    private SourceCell ReadCell(XmlReader xml)
    {
        var type = xml.GetAttribute("t") ?? "n";
        _ = int.TryParse(xml.GetAttribute("s"), NumberStyles.None, CultureInfo.InvariantCulture, out var style);
        if (xml.IsEmptyElement) return new SourceCell("");
        var end = xml.Depth;
        var value = "";
        while (!(xml.NodeType == XmlNodeType.EndElement && xml.Depth == end) && xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element) continue;
            if (xml.LocalName == "is") value = SharedTexts.ReadRuns(xml);
            else if (xml.LocalName == "v" && !xml.IsEmptyElement) value = ReadValue(xml);
        }

        return type switch
        {
            "s" => new SourceCell(Shared(value)),
            "n" => Number(value, formats[style]),
            "d" => DateTime.TryParse(value, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var date) ? Date(DateOnly.FromDateTime(date)) : new SourceCell(value),
            "b" => new SourceCell(value == "1" ? "TRUE" : "FALSE"),
            _ => new SourceCell(value),
        };
    }

    private static string ReadValue(XmlReader xml)
    {
        var end = xml.Depth;
        var value = "";
        while (xml.Read() && !(xml.NodeType == XmlNodeType.EndElement && xml.Depth == end))
        {
            if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace) value += xml.Value;
        }

        return value;
    }

    private string Shared(string value) =>
        int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < texts.Count ? texts[index] : throw new UnreadableSourceException("a cell names a text that the workbook does not hold", Accepted);

    private SourceCell Number(string value, NumberShape shape)
    {
        if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number)) return new SourceCell(value);
        return shape switch
        {
            NumberShape.Date => SerialDate(number) is { } date ? Date(date) : new SourceCell(value, CellStorage.Date),
            NumberShape.HoursMinutes or NumberShape.Seconds when number is >= 0 and < 1000 => TimeOfDay(Math.Round(number * 86400, 3), shape),
            _ => new SourceCell(Shown(number)),
        };
    }

    // The spreadsheet's own count of days: 1900 is taken for a leap year there, so day 60 never was.
    private DateOnly? SerialDate(double serial)
    {
        var day = Math.Floor(serial);
        if (day is < 0 or > 100_000) return null;
        if (countsFrom1904) return new DateOnly(1904, 1, 1).AddDays((int)day);
        if (day is < 1 or 60) return null;
        return new DateOnly(1899, 12, day < 60 ? 31 : 30).AddDays((int)day);
    }

    private static SourceCell Date(DateOnly date) => new(date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), CellStorage.Date);

    private static SourceCell TimeOfDay(double seconds, NumberShape shape)
    {
        var span = TimeSpan.FromSeconds(seconds);
        var text = string.Create(CultureInfo.InvariantCulture, $"{(int)span.TotalHours}:{span.Minutes:00}");
        if (shape == NumberShape.Seconds || span.Seconds != 0 || span.Milliseconds != 0) text += string.Create(CultureInfo.InvariantCulture, $":{span.Seconds:00}");
        if (span.Milliseconds != 0) text += string.Create(CultureInfo.InvariantCulture, $".{span.Milliseconds:000}").TrimEnd('0');
        return new SourceCell(text, CellStorage.DayFraction, seconds);
    }

    // Binary sums such as 256.70000000000005 are shown as the spreadsheet shows them.
    private static string Shown(double number) => (Math.Abs(number) < 1e9 ? Math.Round(number, 6) : number).ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>The column of a reference such as <c>B7</c>, from 0.</summary>
    internal static int Column(string reference)
    {
        var column = 0;
        foreach (var letter in reference.TakeWhile(char.IsAsciiLetter))
        {
            column = (column * 26) + (char.ToUpperInvariant(letter) - 'A' + 1);
            if (column > 100_000) break;
        }

        return column - 1;
    }
}
