namespace SquadAnalytics.Import;

/// <summary>Everything read from the sources, before anything is decided.</summary>
internal sealed class RawImport
{
    public TextTable Names { get; } = new();

    public TextTable Dates { get; } = new();

    public TextTable Protocols { get; } = new();

    public TextTable Labels { get; } = new();

    public TextTable Stations { get; } = new();

    public List<ParsedEntry> Entries { get; } = [];

    public List<SessionDraft> Drafts { get; } = [];

    /// <summary>All data rows, in the order read.</summary>
    public List<ParsedRow> Rows { get; } = [];

    /// <summary>Sources that could not be read at all.</summary>
    public List<CellProblem> Unreadable { get; } = [];

    public List<string> Notes { get; } = [];

    /// <summary>Lines read as titles or headers.</summary>
    public int TitleAndHeaderLines { get; set; }

    /// <summary>The entries of a row.</summary>
    public ReadOnlySpan<ParsedEntry> EntriesOf(ParsedRow row) => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(Entries).Slice(row.FirstEntry, row.EntryCount);

    /// <summary>The entries of all kept or held rows of a draft.</summary>
    public IEnumerable<ParsedEntry> EntriesOf(SessionDraft draft)
    {
        foreach (var row in draft.Rows)
        {
            if (row.IsRefused) continue;
            for (var k = 0; k < row.EntryCount; k++) yield return Entries[row.FirstEntry + k];
        }
    }
}
