namespace SquadAnalytics.Import;

/// <summary>One time cell of a draft and the row it stands in.</summary>
internal readonly record struct DraftCell(ParsedRow Row, ParsedEntry Entry)
{
    public Column Column => Row.Block.Header.Columns[Entry.Column];

    public void Refuse(string reason, string accepts = TimeEntry.Accepted) => Row.Refuse(new RowFault(Column, reason, accepts));
}

/// <summary>The cells of one draft, by set and station; stations by their number in the protocol.</summary>
internal sealed class DraftCells
{
    private DraftCells(SortedDictionary<int, DraftCell> sets, SortedDictionary<int, SortedDictionary<int, DraftCell>> stations, DraftCell? total, int conflicts)
    {
        Sets = sets;
        Stations = stations;
        Total = total;
        Conflicts = conflicts;
    }

    public SortedDictionary<int, DraftCell> Sets { get; }

    public SortedDictionary<int, SortedDictionary<int, DraftCell>> Stations { get; }

    public DraftCell? Total { get; }

    /// <summary>How many sets or stations are written twice with different content.</summary>
    public int Conflicts { get; }

    /// <summary>Gathers the cells of the rows that are not refused; cells that the protocol has no place for are refused.</summary>
    public static DraftCells Gather(RawImport raw, SessionDraft draft, Protocol protocol)
    {
        var sets = new SortedDictionary<int, DraftCell>();
        var stations = new SortedDictionary<int, SortedDictionary<int, DraftCell>>();
        DraftCell? total = null;
        var conflicts = 0;
        foreach (var row in draft.Rows)
        {
            if (row.IsRefused) continue;
            for (var k = row.FirstEntry; k < row.FirstEntry + row.EntryCount; k++)
            {
                var cell = new DraftCell(row, raw.Entries[k]);
                if (cell.Entry.IsTotal)
                {
                    total = cell;
                    continue;
                }

                if (cell.Entry.Kind == EntryKind.NotRecorded && !draft.Block.Header.IsLong) continue;
                if (cell.Entry.Set > protocol.Sets)
                {
                    if (cell.Entry.Kind != EntryKind.NotRecorded) cell.Refuse(FormattableString.Invariant($"'{protocol.Name}' has {protocol.Sets} sets, this is set {cell.Entry.Set}"), "a time in the sets that the protocol has");
                    continue;
                }

                if (cell.Entry.Station == 0)
                {
                    if (!sets.TryAdd(cell.Entry.Set, cell) && !SameContent(sets[cell.Entry.Set], cell)) conflicts++;
                }
                else if (StationNumber(raw, draft, protocol, cell) is { } station)
                {
                    if (!stations.TryGetValue(cell.Entry.Set, out var ofSet)) stations[cell.Entry.Set] = ofSet = [];
                    if (!ofSet.TryAdd(station, cell) && !SameContent(ofSet[station], cell)) conflicts++;
                }
            }
        }

        return new DraftCells(sets, stations, total, conflicts);
    }

    private static bool SameContent(DraftCell left, DraftCell right) => left.Entry.Kind == right.Entry.Kind && Math.Abs(left.Entry.Seconds - right.Entry.Seconds) < 5e-4;

    private static int? StationNumber(RawImport raw, SessionDraft draft, Protocol protocol, DraftCell cell)
    {
        var written = cell.Entry.Station;
        if (written > 0)
        {
            if (protocol.Stations.Count == 0 || written <= protocol.Stations.Count) return written;
            cell.Refuse(FormattableString.Invariant($"'{protocol.Name}' has {protocol.Stations.Count} stations, this is station {written}"), "a station that the protocol has");
            return null;
        }

        var name = raw.Stations[-1 - written];
        if (protocol.Stations.Count == 0) return 1 + draft.Block.StationNames.IndexOf(written);
        var key = NameKey.Of(name);
        for (var k = 0; k < protocol.Stations.Count; k++)
        {
            if (NameKey.Of(protocol.Stations[k].Name) == key) return k + 1;
        }

        cell.Refuse($"'{protocol.Name}' has no station '{name}'", string.Join(", ", protocol.Stations.Select(station => station.Name)));
        return null;
    }
}
