namespace SquadAnalytics.Import;

/// <summary>A file that was opened: its sheets, and what a person should know about how it was opened.</summary>
/// <param name="Sheets">The sheets to read.</param>
/// <param name="Notes">Notes for the report.</param>
internal sealed record OpenedSource(IReadOnlyList<SourceSheet> Sheets, IReadOnlyList<string> Notes)
{
    private static ReadOnlySpan<byte> ZipMark => "PK\u0003\u0004"u8;

    private static ReadOnlySpan<byte> CompoundMark => [0xD0, 0xCF, 0x11, 0xE0];

    /// <summary>Opens a source.</summary>
    /// <param name="source">The source.</param>
    /// <param name="knownNames">Names that are expected in it.</param>
    /// <exception cref="UnreadableSourceException">It cannot be read at all.</exception>
    public static OpenedSource Open(ImportSource source, IReadOnlyList<string> knownNames)
    {
        var bytes = Read(source);
        if (bytes.AsSpan().StartsWith(ZipMark)) return Workbook.Open(source.Name, bytes);
        if (bytes.AsSpan().StartsWith(CompoundMark))
            throw new UnreadableSourceException("an old or encrypted workbook cannot be read", "a workbook saved as .xlsx without a password, or a text file");
        return TextFile.Open(source.Name, bytes, knownNames);
    }

    private static byte[] Read(ImportSource source)
    {
        try
        {
            return source.Read();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new UnreadableSourceException($"the file cannot be opened ({error.Message})", "a file that exists and may be read");
        }
    }
}
