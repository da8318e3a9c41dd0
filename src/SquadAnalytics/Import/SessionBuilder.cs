using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Makes sessions of drafts whose athlete, date and protocol are known, or refuses their bad cells.</summary>
internal sealed class SessionBuilder(RawImport raw, Decisions decisions, Squad? squad)
{
    // Splits may not add up to more than the set by more than the error of two stopwatch presses.
    private const double SumTolerance = 0.5;

    private readonly Plausibility _plausibility = new(raw, squad);

    /// <summary>Looks for what is implausible in the sessions built.</summary>
    public Plausibility Plausibility => _plausibility;

    /// <summary>Builds the session of a draft; null where nothing is recorded or nothing is left.</summary>
    public Session? Build(SessionDraft draft)
    {
        // Each refused row takes its cells with it, so the rest is looked at once more.
        while (draft.IsOpen)
        {
            var refused = Refused(draft);
            var session = TryBuild(draft, refused);
            if (Refused(draft) == refused) return session;
        }

        return null;
    }

    private Session? TryBuild(SessionDraft draft, int refusedBefore)
    {
        var protocol = draft.Protocol!;
        var cells = DraftCells.Gather(raw, draft, protocol);
        if (cells.Conflicts > 0)
        {
            AskTwice(draft);
            return null;
        }

        var times = WorkTimes.OfSets(draft, protocol, cells);
        var stations = Stations(draft, protocol, cells, times);
        foreach (var (set, cell) in cells.Sets.Where(cell => times.ContainsKey(cell.Key))) _plausibility.Check(draft, cell, set, times[set]);
        var statuses = Statuses(draft, cells, times, stations);
        CheckTotal(draft, cells, times);
        if (Refused(draft) != refusedBefore) return null;
        if (times.Count == 0 && stations.Count == 0 && Array.TrueForAll(statuses, status => status == SetStatus.NotRecorded)) return null;
        _plausibility.Check(draft);
        var sets = new SetTime[protocol.Sets];
        for (var set = 1; set <= sets.Length; set++) sets[set - 1] = times.TryGetValue(set, out var time) ? new SetTime(set, new Seconds(time)) : new SetTime(set, statuses[set - 1]);
        return new Session(Session.IdFor(draft.Athlete!.Id, draft.Date!.Value, protocol.Id), draft.Athlete.Id, draft.Date.Value, protocol, sets)
        {
            Stations = stations,
            TimingResolution = Resolution(cells),
            Place = draft.Remarks?.Place,
            Timer = draft.Remarks?.Timer,
            TemperatureCelsius = draft.Remarks?.TemperatureCelsius,
        };
    }

    private static int Refused(SessionDraft draft) => draft.Rows.Count(row => row.IsRefused);

    private static List<StationTime> Stations(SessionDraft draft, Protocol protocol, DraftCells cells, SortedDictionary<int, double> times)
    {
        List<StationTime> stations = [];
        foreach (var (set, ofSet) in cells.Stations)
        {
            var splits = WorkTimes.OfStations(draft, protocol, cells, set);
            foreach (var (station, cell) in ofSet)
            {
                if (splits.TryGetValue(station, out var split)) stations.Add(new StationTime(set, station, new Seconds(split)));
                else if (Status(cell.Entry.Kind) is { } status and not SetStatus.Timed) stations.Add(new StationTime(set, station, status));
            }

            var sum = splits.Values.Sum();
            if (times.TryGetValue(set, out var whole))
            {
                if (sum > whole + SumTolerance) ofSet.Values.First().Refuse(FormattableString.Invariant($"the stations of set {set} add up to {sum:0.###} s, more than the set's {whole:0.###} s"), "station times that fit into the set time");
            }
            else if (!cells.Sets.ContainsKey(set) && splits.Count > 0 && splits.Count == Expected(draft, protocol))
            {
                times[set] = Math.Round(sum, 3);
            }
        }

        return stations;
    }

    private static int Expected(SessionDraft draft, Protocol protocol)
    {
        if (protocol.Stations.Count > 0) return protocol.Stations.Count;
        var header = draft.Block.Header;
        return header.StationTimes.Count > 0 ? header.StationTimes.GroupBy(column => column.Set).Max(set => set.Count()) : draft.Block.StationNames.Count;
    }

    // By place: the status of set k stands at k - 1.
    private static SetStatus[] Statuses(SessionDraft draft, DraftCells cells, SortedDictionary<int, double> times, List<StationTime> stations)
    {
        var statuses = new SetStatus[draft.Protocol!.Sets];
        for (var set = 1; set <= statuses.Length; set++) statuses[set - 1] = cells.Sets.TryGetValue(set, out var cell) ? Status(cell.Entry.Kind) ?? SetStatus.NotRecorded : SetStatus.NotRecorded;
        foreach (var station in stations.Where(station => station.Status == SetStatus.NotFinished && statuses[station.Set - 1] == SetStatus.NotRecorded)) statuses[station.Set - 1] = SetStatus.NotFinished;
        var saysNotStarted = statuses[0] == SetStatus.NotStarted || cells.Total?.Entry.Kind == EntryKind.NotStarted;
        if (times.Count == 0 && saysNotStarted && Array.TrueForAll(statuses, status => status is SetStatus.NotRecorded or SetStatus.NotStarted))
        {
            Array.Fill(statuses, SetStatus.NotStarted);
        }
        else if (cells.Total is { Entry.Kind: EntryKind.NotFinished } && Enumerable.Range(1, statuses.Length).FirstOrDefault(set => !times.ContainsKey(set)) is var stopped and > 0 && statuses[stopped - 1] == SetStatus.NotRecorded)
        {
            statuses[stopped - 1] = SetStatus.NotFinished;
        }

        return statuses;
    }

    private static SetStatus? Status(EntryKind kind) => kind switch
    {
        EntryKind.Timed => SetStatus.Timed,
        EntryKind.NotFinished => SetStatus.NotFinished,
        EntryKind.NotStarted => SetStatus.NotStarted,
        _ => null,
    };

    private static void CheckTotal(SessionDraft draft, DraftCells cells, SortedDictionary<int, double> times)
    {
        if (cells.Total is not { } total || total.Entry.Kind == EntryKind.NotRecorded) return;
        var isComplete = times.Count == draft.Protocol!.Sets;
        if (!total.Entry.IsTimed)
        {
            if (isComplete) total.Refuse($"the total says {(total.Entry.Kind == EntryKind.NotFinished ? "DNF" : "DNS")}, but every set has a time", "the sum of the sets, a dash or a blank");
            else if (total.Entry.Kind == EntryKind.NotStarted && times.Count > 0) total.Refuse("the total says DNS, but a set has a time", "DNF, a dash or a blank");
            return;
        }

        if (!isComplete)
        {
            total.Refuse(string.Create(CultureInfo.InvariantCulture, $"there is a total, but only {times.Count} of {draft.Protocol.Sets} sets have a time"), "all set times, or no total");
            return;
        }

        var sum = times.Values.Sum();
        var step = TimeEntry.ResolutionOf(total.Entry.Decimals).Value;
        var decimals = cells.Sets.Values.Max(cell => (int?)cell.Entry.Decimals) ?? total.Entry.Decimals;
        var tolerance = total.Entry.Decimals < decimals ? step : 5e-4;
        if (Math.Abs(sum - total.Entry.Seconds) > tolerance)
            total.Refuse(string.Create(CultureInfo.InvariantCulture, $"the total says {total.Entry.Seconds:0.###} s, but the sets add up to {sum:0.###} s"), "a total that equals the sum of the sets");
    }

    private static Seconds? Resolution(DraftCells cells)
    {
        var timed = cells.Sets.Values.Concat(cells.Stations.Values.SelectMany(set => set.Values)).Where(cell => cell.Entry.IsTimed).ToList();
        return timed.Count == 0 ? null : TimeEntry.ResolutionOf(timed.Max(cell => cell.Entry.Decimals));
    }

    private void AskTwice(SessionDraft draft) =>
        decisions.Ask(
            string.Create(CultureInfo.InvariantCulture, $"duplicate:{draft.Block.Key}:{draft.FirstLine}"),
            DecisionKind.Duplicate,
            $"{draft.Block.InWords}: {raw.Names[draft.Texts.Name]} has two different times for the same set. Mark a second test of the day in a column 'session', or correct the file.",
            [],
            draft.Rows.Where(row => !row.IsRefused));
}
