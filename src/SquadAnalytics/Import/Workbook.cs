using System.IO.Compression;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace SquadAnalytics.Import;

/// <summary>Workbooks (.xlsx): every visible sheet, with dates, texts, and the values that formulas had when the file was saved.</summary>
internal static class Workbook
{
    // A small file that unpacks to more than this is no clipboard but a trap.
    private const long LargestUnpacked = 256L << 20;
    private const int MostParts = 5000;

    // The parts that are read as a whole: the list of sheets and the styles.
    private const long LargestSmallPart = 8L << 20;

    private const string Accepted = "an .xlsx workbook as a spreadsheet saves it, or the sheet saved as a text file";

    /// <summary>Opens a workbook.</summary>
    /// <exception cref="UnreadableSourceException">It is damaged, too large, or no workbook.</exception>
    public static OpenedSource Open(string file, byte[] bytes)
    {
        try
        {
            CheckSize(bytes);
            using var stream = new MemoryStream(bytes, writable: false);
            using var document = SpreadsheetDocument.Open(stream, false, new OpenSettings { MaxCharactersInPart = LargestSmallPart });
            return Read(file, document.WorkbookPart ?? throw new UnreadableSourceException("the file holds no workbook", Accepted));
        }
        catch (Exception error) when (error is not (UnreadableSourceException or OutOfMemoryException))
        {
            // A damaged package surfaces as any of a dozen exception types of the package reader, of its XML, or of the zip below it.
            throw new UnreadableSourceException($"the workbook is damaged ({error.Message.ReplaceLineEndings(" ")})", Accepted, error);
        }
    }

    private static OpenedSource Read(string file, WorkbookPart workbook)
    {
        List<SourceSheet> sheets = [];
        List<string> notes = [];
        var texts = SharedTexts.Read(workbook.SharedStringTablePart);
        var formats = NumberFormats.Read(workbook.WorkbookStylesPart?.Stylesheet);
        var countsFrom1904 = workbook.Workbook?.WorkbookProperties?.Date1904?.Value ?? false;
        foreach (var sheet in workbook.Workbook?.Sheets?.Elements<Sheet>() ?? [])
        {
            var name = sheet.Name?.Value ?? "";
            if (sheet.Id?.Value is not { } id || !workbook.TryGetPartById(id, out var part) || part is not WorksheetPart) continue;
            if (sheet.State is { } state && state.Value != SheetStateValues.Visible)
            {
                notes.Add($"{file}: the hidden sheet '{name}' was not read.");
                continue;
            }

            using var xml = part.GetStream(FileMode.Open, FileAccess.Read);
            var lines = new SheetXml(texts, formats, countsFrom1904).Read(xml);
            sheets.Add(new SourceSheet(file, name, () => lines));
        }

        return new OpenedSource(sheets, notes);
    }

    // The sizes that the package states may lie, so its parts are unpacked once and counted.
    private static void CheckSize(byte[] bytes)
    {
        using var archive = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
        if (archive.Entries.Count > MostParts) throw new UnreadableSourceException("the workbook has too many parts", Accepted);
        var buffer = new byte[1 << 16];
        var unpacked = 0L;
        foreach (var entry in archive.Entries)
        {
            using var content = entry.Open();
            for (int read; (read = content.Read(buffer)) > 0;)
            {
                unpacked += read;
                if (unpacked > LargestUnpacked) throw new UnreadableSourceException("the workbook unpacks to more than 256 MB", Accepted);
            }
        }
    }
}
