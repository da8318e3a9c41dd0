using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Import;

/// <summary>Settles whether set times are work times or readings of the running clock at each finish.</summary>
/// <remarks>A row that rises by about the start interval per set is asked about, never converted unasked.</remarks>
internal static partial class ClockSettling
{
    private const string Work = "work";
    private const string Clock = "clock";
    private const string ClockEvery = "clock every N s";

    // "About the start interval": work times of neighbouring sets differ by less than this share of it.
    private const double Tolerance = 0.4;

    // Without a known start interval, a rise of fewer seconds per set may be a slow-down.
    private const double LeastRise = 20;

    public static void Apply(RawImport raw, ImportOptions options, Decisions decisions)
    {
        if (options.Times == TimeMeaning.Work) return;
        foreach (var drafts in raw.Drafts.Where(draft => draft.Rows.Exists(row => !row.IsRefused)).GroupBy(draft => (draft.Block, Interval: draft.Protocol?.StartInterval?.Value)))
        {
            var affected = drafts.Where(draft => options.Times == TimeMeaning.Clock || Rises(SetSeconds(raw, draft), drafts.Key.Interval)).ToList();
            if (affected.Count == 0) continue;
            if (options.Times == TimeMeaning.Clock && drafts.Key.Interval is { } known) Convert(affected, known);
            else Ask(raw, drafts.Key.Block, drafts.Key.Interval, affected, options.Times is not null, decisions);
        }
    }

    private static void Ask(RawImport raw, Block block, double? interval, List<SessionDraft> drafts, bool isStated, Decisions decisions)
    {
        var example = string.Join(", ", SetSeconds(raw, drafts[0]).Select(set => set.Value.ToString("0.###", CultureInfo.InvariantCulture)));
        var every = interval is null ? ClockEvery : Clock;
        var answer = decisions.Ask(
            interval is null ? $"clock:{block.Key}" : string.Create(CultureInfo.InvariantCulture, $"clock:{block.Key}:{interval}"),
            DecisionKind.Clock,
            isStated
                ? $"{block.InWords}: the set times are said to be the running clock; how often did it start a set?"
                : $"{block.InWords}: the set times rise like a running clock ({example} in line {drafts[0].FirstLine}). Are they the clock at each finish, or work times?",
            isStated ? [every] : [Work, every],
            drafts.SelectMany(draft => draft.Rows).Where(row => !row.IsRefused),
            ClockEvery,
            text => interval is null && Seconds(text) is not null);
        if (answer is null or Work) return;
        Convert(drafts, answer == Clock ? interval!.Value : Seconds(answer)!.Value);
    }

    private static void Convert(IEnumerable<SessionDraft> drafts, double interval)
    {
        foreach (var draft in drafts) draft.ClockSeconds = interval;
    }

    private static List<KeyValuePair<int, double>> SetSeconds(RawImport raw, SessionDraft draft) =>
        [.. raw.EntriesOf(draft).Where(entry => entry.IsTimed && entry.Set > 0 && entry.Station == 0 && entry.Doubt != EntryDoubt.DayFraction).DistinctBy(entry => entry.Set).OrderBy(entry => entry.Set).Select(entry => KeyValuePair.Create((int)entry.Set, entry.Seconds))];

    private static bool Rises(List<KeyValuePair<int, double>> sets, double? interval)
    {
        if (sets.Count < (interval is null ? 3 : 2)) return false;
        var rises = sets.Zip(sets.Skip(1), (earlier, later) => (later.Value - earlier.Value) / (later.Key - earlier.Key)).ToList();
        var typical = interval ?? rises.Average();
        return typical >= (interval is null ? LeastRise : 0)
            && rises.TrueForAll(rise => Math.Abs(rise - typical) <= Tolerance * typical)
            && (interval is not null || sets[^1].Value > 2 * sets[0].Value);
    }

    private static double? Seconds(string answer) =>
        Interval().Match(answer) is { Success: true } match && double.TryParse(match.Groups["n"].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) && seconds is > 0 and < 3600 ? seconds : null;

    [GeneratedRegex(@"^clock every (?<n>[0-9]{1,4}(\.[0-9]+)?) ?s?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Interval();
}
