using System.Globalization;
using System.Text;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>The empty tables that belong to a recording sheet.</summary>
internal static class SheetFiles
{
    // The spreadsheet's own number for "text", and the style that uses it.
    private const uint TextFormat = 49;
    private const uint TextStyle = 1;

    /// <summary>Opens as UTF-8 in a spreadsheet too.</summary>
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: true);

    public static byte[] Csv(RecordingSheet sheet)
    {
        var text = new StringBuilder();
        foreach (var row in Rows(sheet)) text.AppendJoin(',', row.Select(TableCsv.Field)).Append("\r\n");
        return [.. Utf8.GetPreamble(), .. Utf8.GetBytes(text.ToString())];
    }

    public static byte[] Workbook(RecordingSheet sheet)
    {
        using var bytes = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(bytes, SpreadsheetDocumentType.Workbook))
        {
            var book = document.AddWorkbookPart();
            book.AddNewPart<WorkbookStylesPart>().Stylesheet = Styles();
            var part = book.AddNewPart<WorksheetPart>();
            var rows = Rows(sheet);
            var columns = rows.Max(static row => row.Count);
            var data = new SheetData(rows.Select((row, k) => new Row(Enumerable.Range(0, k < 2 ? row.Count : columns).Select(column => Cell(k, column, column < row.Count ? row[column] : ""))) { RowIndex = (uint)k + 1 }));
            part.Worksheet = new Worksheet(new Columns(new Column { Min = 1, Max = 1, Width = 26, CustomWidth = true, Style = TextStyle }, new Column { Min = 2, Max = (uint)columns, Width = sheet.Options.Stations ? 18 : 9, CustomWidth = true, Style = TextStyle }), data);
            book.Workbook = new Workbook(new Sheets(new Sheet { Name = "Sheet", SheetId = 1, Id = book.GetIdOfPart(part) }));
        }

        return bytes.ToArray();
    }

    /// <summary>Title with code, protocol and date; headers; a row for each athlete, all heats below each other.</summary>
    private static IReadOnlyList<IReadOnlyList<string>> Rows(RecordingSheet sheet)
    {
        var headers = sheet.Options.Stations ? StationHeaders(sheet.Protocol) : [.. Enumerable.Range(1, sheet.Protocol.Sets).Select(static set => string.Create(CultureInfo.InvariantCulture, $"set {set}"))];
        return
        [
            [string.Create(CultureInfo.InvariantCulture, $"{sheet.Protocol.Name}, {sheet.Date:yyyy-MM-dd}, sheet {sheet.Code}")],
            ["name", .. headers],
            .. sheet.Heats.SelectMany(static heat => heat.Labels).Select(label => (IReadOnlyList<string>)[label, .. headers.Select(static _ => "")]),
        ];
    }

    private static IReadOnlyList<string> StationHeaders(Protocol protocol) =>
    [
        .. Enumerable.Range(1, protocol.Sets).SelectMany(set => protocol.Stations.Select(station => string.Create(CultureInfo.InvariantCulture, $"S{set} {station.Name}")).Append(string.Create(CultureInfo.InvariantCulture, $"set {set}"))),
    ];

    private static Cell Cell(int row, int column, string text)
    {
        var cell = new Cell { CellReference = $"{Letters(column)}{(row + 1).ToString(CultureInfo.InvariantCulture)}", StyleIndex = TextStyle };
        if (text.Length > 0)
        {
            cell.DataType = CellValues.InlineString;
            cell.InlineString = new InlineString(new Text(WordText.Allowed(text)) { Space = SpaceProcessingModeValues.Preserve });
        }

        return cell;
    }

    private static string Letters(int column) => column < 26 ? ((char)('A' + column)).ToString() : Letters((column / 26) - 1) + (char)('A' + (column % 26));

    private static Stylesheet Styles() => new(
        new Fonts(new Font()),
        new Fills(new Fill(new PatternFill { PatternType = PatternValues.None }), new Fill(new PatternFill { PatternType = PatternValues.Gray125 })),
        new Borders(new Border()),
        new CellStyleFormats(new CellFormat()),
        new CellFormats(new CellFormat(), new CellFormat { NumberFormatId = TextFormat, ApplyNumberFormat = true }));
}
