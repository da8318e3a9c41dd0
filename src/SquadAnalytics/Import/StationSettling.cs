namespace SquadAnalytics.Import;

/// <summary>Settles whether station times are splits, cumulative within the set, or readings of the running clock.</summary>
internal static class StationSettling
{
    private const string Splits = "splits";
    private const string Cumulative = "cumulative";
    private const string Clock = "clock";

    // How far a sum of splits, or a last cumulative time, may lie from the set time and still be taken as the same.
    private const double SameSeconds = 2;

    public static void Apply(RawImport raw, Decisions decisions)
    {
        var withStations = raw.Drafts.Where(draft => draft.Rows.Exists(row => !row.IsRefused) && raw.EntriesOf(draft).Any(entry => entry.Station != 0));
        foreach (var drafts in withStations.Where(draft => LooksCumulative(raw, draft)).GroupBy(draft => draft.Block))
        {
            var answer = decisions.Ask(
                $"stations:{drafts.Key.Key}",
                DecisionKind.Stations,
                FormattableString.Invariant($"{drafts.Key.InWords}: station times rise within each set, first in line {drafts.First().FirstLine}. Are they the time at each station, cumulative within the set, or the running clock?"),
                [Splits, Cumulative, Clock],
                drafts.SelectMany(draft => draft.Rows).Where(row => !row.IsRefused));
            if (answer is null or Splits) continue;
            foreach (var draft in drafts) draft.Stations = answer == Cumulative ? StationMeaning.Cumulative : StationMeaning.Clock;
        }
    }

    // Every set rises from station to station, and the set time does not say that these are splits.
    private static bool LooksCumulative(RawImport raw, SessionDraft draft)
    {
        var bySet = raw.EntriesOf(draft).Where(entry => entry.IsTimed && entry.Set > 0 && entry.Doubt != EntryDoubt.DayFraction).ToLookup(entry => entry.Set);
        var any = false;
        foreach (var set in bySet)
        {
            var stations = set.Where(entry => entry.Station != 0).OrderBy(entry => Math.Abs(entry.Station)).Select(entry => entry.Seconds).ToList();
            if (stations.Count < 2) continue;
            if (!stations.Zip(stations.Skip(1)).All(pair => pair.Second > pair.First)) return false;
            var whole = set.Where(entry => entry.Station == 0).Select(entry => entry.Seconds).DefaultIfEmpty(0).First();
            if (whole > 0 && stations.Sum() <= whole + SameSeconds) return false;
            if (whole == 0 && stations.Count == 2) continue;
            any = true;
        }

        return any;
    }
}
