namespace SquadAnalytics.Import;

/// <summary>Work times of sets and splits of stations, in whichever way they were written.</summary>
internal static class WorkTimes
{
    /// <summary>Work times of the timed sets.</summary>
    /// <remarks>
    /// Of clock readings c_k on a start interval T: t_k = c_k - start_k with start_k = max((k-1)T, c_(k-1)), because a set starts late where the one before it was late;
    /// start_k = (k-1)T where the test ends at a missed start, or where the set before was not timed. Source: clock arithmetic, common practice, no source.
    /// </remarks>
    public static SortedDictionary<int, double> OfSets(SessionDraft draft, Protocol protocol, DraftCells cells)
    {
        var times = new SortedDictionary<int, double>();
        foreach (var (set, cell) in cells.Sets)
        {
            if (!cell.Entry.IsTimed) continue;
            if (draft.ClockSeconds is not { } interval)
            {
                times[set] = cell.Entry.Seconds;
                continue;
            }

            var before = cells.Sets.TryGetValue(set - 1, out var previous) && previous.Entry.IsTimed ? previous.Entry.Seconds : 0;
            var work = Round(cell.Entry.Seconds - Start(protocol, set, interval, before));
            if (work > 0) times[set] = work;
            else cell.Refuse(FormattableString.Invariant($"read as the running clock, set {set} would end before it starts"), "the clock at the finish of the set");
        }

        return times;
    }

    /// <summary>Splits of one set's timed stations.</summary>
    public static SortedDictionary<int, double> OfStations(SessionDraft draft, Protocol protocol, DraftCells cells, int set)
    {
        var splits = new SortedDictionary<int, double>();
        var from = 0.0;
        if (draft.Stations == StationMeaning.Clock)
        {
            if ((draft.ClockSeconds ?? protocol.StartInterval?.Value) is not { } interval)
            {
                cells.Stations[set].Values.First().Refuse("the start interval is not known, so the running clock cannot be read", "splits or cumulative times");
                return splits;
            }

            var before = cells.Stations.TryGetValue(set - 1, out var previous) ? previous.Values.Where(cell => cell.Entry.IsTimed).Select(cell => cell.Entry.Seconds).DefaultIfEmpty(0).Max() : 0;
            from = Start(protocol, set, interval, before);
        }

        var expected = 1;
        foreach (var (station, cell) in cells.Stations[set])
        {
            var isNext = station == expected;
            expected = station + 1;
            if (!cell.Entry.IsTimed) continue;
            if (draft.Stations == StationMeaning.Split)
            {
                splits[station] = cell.Entry.Seconds;
                continue;
            }

            // Without the reading before it, a cumulative time is no split of one station.
            var split = Round(cell.Entry.Seconds - from);
            from = cell.Entry.Seconds;
            if (split <= 0) cell.Refuse("read as cumulative, this station would end before it starts", "times that rise from station to station");
            else if (isNext) splits[station] = split;
        }

        return splits;
    }

    private static double Start(Protocol protocol, int set, double interval, double finishBefore) =>
        protocol.StartRule == StartRule.StopAtMissedStart ? (set - 1) * interval : Math.Max((set - 1) * interval, finishBefore);

    // Differences of readings with at most three decimals.
    private static double Round(double seconds) => Math.Round(seconds, 3);
}
