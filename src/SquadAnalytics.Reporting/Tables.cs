using System.Globalization;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting;

/// <summary>Results as tables: one way to show each of them, in a notebook, a report and an export alike.</summary>
public static partial class Tables
{
    /// <summary>Set times of sessions, one row per session, with total or the reason why there is none.</summary>
    /// <param name="caption">What they are: <c>Sessions of A1</c>.</param>
    /// <param name="sessions">Sessions of one protocol, in the order of the rows; at least one.</param>
    public static Table SetTimes(string caption, IReadOnlyList<Session> sessions)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        if (sessions.Count == 0) throw new ArgumentException("There is no session to list.", nameof(sessions));
        var decimals = NumberFormat.For(sessions).EntryDecimals;
        var sets = sessions.Max(session => session.Protocol.Sets);
        IReadOnlyList<TableColumn> columns = [new("date"), .. Enumerable.Range(1, sets).Select(set => TableColumn.Figures($"set {Count(set)}", "s")), TableColumn.Figures("total", "s")];
        return new Table(caption, columns, [.. sessions.Select(session => (IReadOnlyList<TableCell>)
        [
            Date(session.Date),
            .. Enumerable.Range(0, sets).Select(k => k < session.Sets.Count ? SetCell(session.Sets[k], decimals) : TableCell.Nothing),
            session.Total.Match(total => TableCell.Figure(total.Value, decimals), TableCell.Refused),
        ])]);
    }

    /// <summary>Where the slow-down arises, station by station.</summary>
    public static Table Stations(StationSharesResult shares, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(shares);
        ArgumentNullException.ThrowIfNull(format);
        var late = Sentences.Sets(shares.AfterSet + 1, shares.Selection.Sessions[0].Protocol.Sets);
        var early = Sentences.Sets(1, shares.AfterSet);
        return new Table(
            $"Where the slow-down arises: {late} against {early}",
            [new("station"), TableColumn.Figures("early", "s"), TableColumn.Figures("late", "s"), TableColumn.Figures("late minus early", "s"), TableColumn.Figures("interval", "s"), TableColumn.Figures("more (+) or less (−) than its even share", "s")],
            [
                .. shares.Rows.Select(row => Row(row.Name, row.Early, row.Late, row.Slowdown, row.Excess, format)),
                ["whole set", TableCell.Nothing, TableCell.Nothing, Change(shares.Slowdown, format), Limits(shares.Slowdown, format), TableCell.Nothing],
            ])
        {
            Notes = [$"{shares.Level} intervals, {Sentences.Plural(shares.SessionIds.Count, "session")} with station times; positive is slower.", .. shares.ReadingRules],
        };
    }

    /// <summary>Work and rest of one session on the rolling clock.</summary>
    public static Table Rest(WorkAndRestResult clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        var decimals = NumberFormat.For([clock.Session]).EntryDecimals;
        TableCell Cell(Seconds? seconds) => seconds is { } value ? TableCell.Figure(value.Value, decimals) : TableCell.Nothing;
        return new Table(
            $"Work and rest, one start every {NumberFormat.Fixed(clock.StartInterval.Value, 0)} s",
            [new("set"), TableColumn.Figures("work", "s"), TableColumn.Figures("rest", "s"), TableColumn.Figures("rest lost so far", "s"), TableColumn.Figures("late start", "s")],
            [.. clock.Sets.Select(set => (IReadOnlyList<TableCell>)[Count(set.Set), Cell(set.Work), Cell(set.Rest), Cell(set.RestLost), Cell(set.Late)])])
        {
            Notes = ["Rest lost: against repeating the first set. After the last set no rest is counted."],
        };
    }

    private static IReadOnlyList<TableCell> Row(string name, Estimate early, Estimate late, Estimate slowdown, Estimate excess, NumberFormat format) =>
        [name, TableCell.Figure(early.Value, format.EntryDecimals), TableCell.Figure(late.Value, format.EntryDecimals), Change(slowdown, format), Limits(slowdown, format), Change(excess, format)];

    private static TableCell Change(Estimate estimate, NumberFormat format) => TableCell.SignedFigure(estimate.Value, format.Decimals(estimate));

    private static TableCell Limits(Estimate estimate, NumberFormat format)
    {
        if (estimate.Interval is not { } interval) return TableCell.Nothing;
        var decimals = format.Decimals(estimate);
        return $"{NumberFormat.Fixed(interval.Lower, decimals)} to {NumberFormat.Fixed(interval.Upper, decimals)}";
    }

    private static TableCell SetCell(SetTime set, int decimals) => set.Status switch
    {
        SetStatus.Timed => TableCell.Figure(set.Work!.Value.Value, decimals),
        SetStatus.CompletedUntimed => "done, not timed",
        SetStatus.NotFinished => "not finished",
        SetStatus.NotStarted => "not started",
        SetStatus.StoppedForHealth => "stopped",
        _ => TableCell.Nothing,
    };

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
