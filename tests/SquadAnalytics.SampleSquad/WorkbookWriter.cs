using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace SquadAnalytics.SampleSquad;

/// <summary>Writes small workbooks as spreadsheets save them: for tests of the import, and for its sample files.</summary>
public static class WorkbookWriter
{
    private const uint DateStyle = 1;
    private const uint HoursMinutesStyle = 2;
    private const uint MinutesSecondsStyle = 3;

    /// <summary>The workbook as bytes.</summary>
    /// <param name="sheets">Its sheets.</param>
    /// <param name="countsFrom1904">Whether days are counted from 1904 on.</param>
    public static byte[] Write(IReadOnlyList<WorkbookSheet> sheets, bool countsFrom1904 = false)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        using var stream = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var workbook = document.AddWorkbookPart();
            List<string> shared = [];
            var list = new Sheets();
            foreach (var sheet in sheets)
            {
                var part = workbook.AddNewPart<WorksheetPart>();
                part.Worksheet = new Worksheet(Rows(sheet, shared));
                if (sheet.Merged.Count > 0) part.Worksheet.Append(new MergeCells(sheet.Merged.Select(range => new MergeCell { Reference = range })));
                list.Append(new Sheet
                {
                    Name = sheet.Name,
                    SheetId = (uint)list.ChildElements.Count + 1,
                    Id = workbook.GetIdOfPart(part),
                    State = sheet.IsHidden ? SheetStateValues.Hidden : SheetStateValues.Visible,
                });
            }

            workbook.Workbook = new DocumentFormat.OpenXml.Spreadsheet.Workbook(new WorkbookProperties { Date1904 = countsFrom1904 }, list);
            workbook.AddNewPart<SharedStringTablePart>().SharedStringTable = new SharedStringTable(shared.Select(text => new SharedStringItem(Preserved(text))));
            workbook.AddNewPart<WorkbookStylesPart>().Stylesheet = Styles();
        }

        return stream.ToArray();
    }

    private static SheetData Rows(WorkbookSheet sheet, List<string> shared)
    {
        var data = new SheetData();
        for (var number = 1; number <= sheet.Rows.Count; number++)
        {
            var cells = sheet.Rows[number - 1];
            if (cells.Count == 0) continue;
            data.Append(new Row(cells.Select((cell, column) => (Cell: cell, Column: column)).Where(entry => entry.Cell != WorkbookCell.Blank).Select(entry => Written(entry.Cell, $"{(char)('A' + entry.Column)}{number.ToString(CultureInfo.InvariantCulture)}", shared)))
            {
                RowIndex = (uint)number,
            });
        }

        return data;
    }

    private static Cell Written(WorkbookCell cell, string reference, List<string> shared)
    {
        switch (cell.Kind)
        {
            case WorkbookCellKind.SharedText:
                if (!shared.Contains(cell.Text)) shared.Add(cell.Text);
                return new Cell(new CellValue(shared.IndexOf(cell.Text))) { CellReference = reference, DataType = CellValues.SharedString };
            case WorkbookCellKind.InlineText:
                return new Cell(new InlineString(Preserved(cell.Text))) { CellReference = reference, DataType = CellValues.InlineString };
            case WorkbookCellKind.Formula:
                return new Cell(new CellFormula(cell.Text), Value(cell)) { CellReference = reference };
            default:
                return new Cell(Value(cell))
                {
                    CellReference = reference,
                    StyleIndex = cell.Kind switch
                    {
                        WorkbookCellKind.Date => DateStyle,
                        WorkbookCellKind.HoursMinutes => HoursMinutesStyle,
                        WorkbookCellKind.MinutesSeconds => MinutesSecondsStyle,
                        _ => 0,
                    },
                };
        }
    }

    private static CellValue Value(WorkbookCell cell) => new(cell.Number.ToString("R", CultureInfo.InvariantCulture));

    private static Text Preserved(string text) => new(text) { Space = SpaceProcessingModeValues.Preserve };

    // Built-in formats 14 (date), 20 (h:mm) and a custom mm:ss.0.
    private static Stylesheet Styles() => new(
        new NumberingFormats(new NumberingFormat { NumberFormatId = 164, FormatCode = "mm:ss.0" }),
        new Fonts(new Font()),
        new Fills(new Fill()),
        new Borders(new Border()),
        new CellFormats(new CellFormat(), new CellFormat { NumberFormatId = 14 }, new CellFormat { NumberFormatId = 20 }, new CellFormat { NumberFormatId = 164 }));
}
