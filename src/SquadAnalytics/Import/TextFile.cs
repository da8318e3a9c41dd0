using CsvHelper;

namespace SquadAnalytics.Import;

/// <summary>Text files: comma, semicolon, tab or bar between the cells.</summary>
internal static class TextFile
{
    private const int LongestLine = 1 << 20;
    private const int MostLinesOfOneRow = 8;

    /// <summary>Decodes a text file and finds out how its cells are separated.</summary>
    public static OpenedSource Open(string file, byte[] bytes, IReadOnlyList<string> knownNames)
    {
        var text = TextDecoding.Of(bytes, knownNames);
        if (text.Utf8.Span.Contains((byte)0)) throw new UnreadableSourceException("the file is not text", "a text file with commas, semicolons or tabs between the cells, or an .xlsx workbook");
        var hint = Hint(text.Utf8.Span);
        var separator = hint ?? SeparatorDetection.Find(candidate => Lines(text.Utf8, candidate, false, 0));
        var breaksInQuotes = !HasBrokenQuotes(text.Utf8, separator);
        List<string> notes = [];
        if (text.IsGuess) notes.Add($"{file}: read as {text.Encoding}, which was detected from its letters; check the names.");
        if (!breaksInQuotes) notes.Add($"{file}: a quotation mark is not closed, so every line break ends a row.");
        IEnumerable<SourceLine> All() => Lines(text.Utf8, separator, breaksInQuotes, hint is null ? 0 : 1);
        return new OpenedSource([new SourceSheet(file, null, text.Utf8.Length < ReadAhead.SmallestFile ? All : () => ReadAhead.Of(All))], notes);
    }

    private static IEnumerable<SourceLine> Lines(ReadOnlyMemory<byte> utf8, char separator, bool breaksInQuotes, int skip)
    {
        using var reader = CsvReader.Create(utf8, Options(separator, breaksInQuotes));
        while (reader.Read())
        {
            if (reader.LineNumber <= skip) continue;
            var cells = new SourceCell[reader.FieldCount];
            var isBlank = true;
            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = new SourceCell(reader.GetString(column));
                isBlank &= cells[column].IsBlank;
            }

            if (!isBlank) yield return new SourceLine(checked((int)reader.LineNumber), cells);
        }
    }

    // One stray quotation mark must not swallow the rows below it: with broken quotes, every line break ends a row.
    private static bool HasBrokenQuotes(ReadOnlyMemory<byte> utf8, char separator)
    {
        if (!utf8.Span.Contains((byte)'"')) return false;
        var broken = false;
        using var reader = CsvReader.Create(utf8, Options(separator, true) with
        {
            OnMalformedRecord = record => broken |= record.Reason is CsvMalformedReason.UnterminatedQuote or CsvMalformedReason.TextAfterClosingQuote,
        });
        while (!broken && reader.Read()) broken |= reader.RawRecord.Count((byte)'\n') >= MostLinesOfOneRow;
        return broken;
    }

    // A spreadsheet writes "sep=;" as the first line when it is told to.
    private static char? Hint(ReadOnlySpan<byte> utf8) =>
        utf8.Length > 4 && utf8.StartsWith("sep="u8) && (utf8.Length == 5 || utf8[5] is (byte)'\r' or (byte)'\n') && utf8[4] is (byte)',' or (byte)';' or (byte)'|' or (byte)'\t' ? (char)utf8[4] : null;

    private static CsvReaderOptions Options(char separator, bool breaksInQuotes) => new()
    {
        Separator = separator,
        HasHeader = false,
        AllowLineBreaksInQuotes = breaksInQuotes,
        TrackLineNumbers = true,
        PoolStrings = true,
        MaxRecordSize = LongestLine,
    };
}
