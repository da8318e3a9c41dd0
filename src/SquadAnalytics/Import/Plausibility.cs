using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Refuses set times that cannot be, and warns of those that are odd.</summary>
/// <remarks>
/// Refused: t > 3T; a time such as 1.02 where minutes and seconds were probably meant. Warned, kept and shown: t below half the fastest band's mean set time;
/// |ln t - median| > 4 · 1.4826 · MAD of the athlete's earlier times of that set (six or more, MAD above 0). Source: common practice, no source; 1.4826 makes the MAD agree with the SD of normal data.
/// </remarks>
internal sealed class Plausibility(RawImport raw, Squad? squad)
{
    private const double LongestShare = 3;
    private const double FastestShare = 0.5;
    private const double MixedUpBelow = 5;
    private const double ShortestInterval = 20;
    private const double MadToSd = 1.4826;
    private const double MadLimit = 4;
    private const int EarlierNeeded = 6;

    private readonly ILookup<string, AthleteEvent> _headKnocks = (squad?.Events ?? []).Where(happened => happened.Kind == EventKind.HeadKnock).ToLookup(happened => happened.AthleteId, StringComparer.Ordinal);
    private readonly List<(ParsedRow Row, ImportWarning Warning)> _warnings = [];

    /// <summary>What is odd in rows that were kept.</summary>
    public IEnumerable<ImportWarning> Warnings => _warnings.Where(entry => entry.Row.IsKept).Select(entry => entry.Warning).Distinct();

    /// <summary>Checks whether the athlete may have been tested on that date at all.</summary>
    public void Check(SessionDraft draft)
    {
        var (athlete, date) = (draft.Athlete!, draft.Date!.Value);
        if (_headKnocks[athlete.Id].Any(knock => knock.BarsTestingOn(date)))
            Warn(draft.Rows[0], null, "the athlete had a head knock and was not cleared for testing by this date");
        if (date < athlete.Joined || date > athlete.Left)
            Warn(draft.Rows[0], null, "the athlete was not in the squad on this date");
    }

    /// <summary>Checks one set time.</summary>
    public void Check(SessionDraft draft, DraftCell cell, int set, double seconds)
    {
        var protocol = draft.Protocol!;
        var interval = protocol.StartInterval?.Value;
        if (seconds > LongestShare * interval)
        {
            cell.Refuse(string.Create(CultureInfo.InvariantCulture, $"{seconds:0.###} s is more than three start intervals of {interval:0.###} s"), "the work time of one set");
            return;
        }

        if (cell.Entry.Decimals is 1 or 2 && cell.Entry.Seconds < MixedUpBelow && interval is not < ShortestInterval)
        {
            var minutes = (int)cell.Entry.Seconds;
            var digits = (cell.Entry.Seconds - minutes).ToString("F2", CultureInfo.InvariantCulture)[2..];
            cell.Refuse(string.Create(CultureInfo.InvariantCulture, $"{cell.Entry.Seconds.ToString($"F{cell.Entry.Decimals}", CultureInfo.InvariantCulture)} s, or {minutes}:{digits}?"), "minutes and seconds with a colon (1:02), or seconds (62)");
            return;
        }

        var bands = protocol.Bands.Count == 0 ? [] : protocol.BandsOn(draft.Date!.Value);
        if (bands.Count > 0 && seconds < FastestShare * bands[0].Low.Value / protocol.Sets)
            Warn(cell, string.Create(CultureInfo.InvariantCulture, $"{seconds:0.###} s is less than half of what the fastest band needs for one set"));
        else if (DeviatesFromEarlier(draft, set, seconds) is { } median)
            Warn(cell, string.Create(CultureInfo.InvariantCulture, $"{seconds:0.###} s is far from this athlete's usual {median:0.###} s in set {set}"));
    }

    /// <summary>Warns of whole columns whose typical time is too short for a set.</summary>
    public IEnumerable<string> ColumnNotes()
    {
        var columns = new Dictionary<(Block Block, short Column), List<double>>();
        foreach (var row in raw.Rows)
        {
            foreach (var entry in raw.EntriesOf(row))
            {
                if (entry is not { IsTimed: true, Set: > 0, Station: 0, Doubt: not EntryDoubt.DayFraction }) continue;
                if (!columns.TryGetValue((row.Block, entry.Column), out var seconds)) columns[(row.Block, entry.Column)] = seconds = [];
                seconds.Add(entry.Seconds);
            }
        }

        return columns.Select(column => (column.Key.Block, column.Key.Column, Median: Median([.. column.Value])))
            .Where(column => column.Median < MixedUpBelow)
            .Select(column => string.Create(CultureInfo.InvariantCulture, $"{column.Block.InWords}: the column '{column.Block.Header.Columns[column.Column].Header}' has a median of {column.Median:0.###} s, too short for a set: were minutes and seconds meant?"));
    }

    private double? DeviatesFromEarlier(SessionDraft draft, int set, double seconds)
    {
        if (squad is null) return null;
        var earlier = squad.SessionsOf(draft.Athlete!.Id)
            .Where(session => !session.IsVoid && session.Date < draft.Date && session.Protocol.Key == draft.Protocol!.Key)
            .Select(session => session.Sets.FirstOrDefault(time => time.Set == set)?.Work?.Value)
            .OfType<double>()
            .Select(time => Math.Log(time))
            .ToList();
        if (earlier.Count < EarlierNeeded) return null;
        var median = Median([.. earlier]);
        var spread = Median([.. earlier.Select(value => Math.Abs(value - median))]);
        return spread > 0 && Math.Abs(Math.Log(seconds) - median) > MadLimit * MadToSd * spread ? Math.Exp(median) : null;
    }

    private void Warn(DraftCell cell, string text) => Warn(cell.Row, cell.Column.Header, text);

    private void Warn(ParsedRow row, string? column, string text) => _warnings.Add((row, new ImportWarning(row.Place, column, text)));

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }
}
