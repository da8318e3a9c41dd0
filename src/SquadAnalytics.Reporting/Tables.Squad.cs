using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Import;

namespace SquadAnalytics.Reporting;

/// <summary>Tables of a squad, and of what was read into it.</summary>
public static partial class Tables
{
    /// <summary>Who changed: one row per athlete, with the verdict under the smallest worthwhile change chosen, half of it and twice.</summary>
    public static Table Changes(SquadChangesResult changes, Squad squad, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"Change of session total, week of {changes.WeekFrom.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}",
            [new("athlete"), TableColumn.Figures("change"), TableColumn.Figures("interval"), new("verdict"), new("with half or twice that size"), TableColumn.Figures("adjusted p")],
            [.. changes.Rows.OrderBy(row => row.Change.Match(change => change.Change.Value, _ => double.PositiveInfinity)).Select(row => Row(squad.Athlete(row.AthleteId).LabelOn(changes.WeekFrom), row, format))])
        {
            Notes = [.. Levels(changes), .. changes.Notes],
        };
    }

    /// <summary>Every set of every session that counts, one row each, athletes by code: for other programs.</summary>
    public static Table LongSets(Squad squad)
    {
        ArgumentNullException.ThrowIfNull(squad);
        return new Table(
            "Set times, one row per set; athletes by code, void sessions left out",
            [new("athlete"), new("date"), TableColumn.Figures("occasion"), new("protocol"), TableColumn.Figures("set"), TableColumn.Figures("work time", "s"), new("status")],
            [.. Counting(squad).SelectMany(session => session.Sets.Select(set => (IReadOnlyList<TableCell>)
            [
                Code(squad, session), Day(session), TableCell.Count(session.Occasion), session.Protocol.Id, TableCell.Count(set.Set),
                set.Work is { } work ? TableCell.Figure(work.Value, 2) : TableCell.Nothing, set.Status.ToString(),
            ]))]);
    }

    /// <summary>Every session that counts, one row each, athletes by code: for other programs.</summary>
    public static Table LongSessions(Squad squad)
    {
        ArgumentNullException.ThrowIfNull(squad);
        return new Table(
            "Sessions, one row each; athletes by code, void sessions left out",
            [new("athlete"), new("date"), TableColumn.Figures("occasion"), new("protocol"), TableColumn.Figures("sets timed"), TableColumn.Figures("session total", "s")],
            [.. Counting(squad).Select(session => (IReadOnlyList<TableCell>)
            [
                Code(squad, session), Day(session), TableCell.Count(session.Occasion), session.Protocol.Id, TableCell.Count(session.TimesSeconds.Count),
                session.Total.Match(total => TableCell.Figure(Math.Round(total.Value, 6), 2), _ => TableCell.Nothing),
            ])]);
    }

    /// <summary>What an import did not keep: every bad cell with its place, text and reason, then the rows that wait for a decision.</summary>
    /// <param name="report">The account of the import.</param>
    public static Table Import(ImportReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        IEnumerable<IReadOnlyList<TableCell>> refused = report.Refused.SelectMany(row => row.Problems).Select(problem => (IReadOnlyList<TableCell>)
            [Place(problem), problem.Text ?? "", problem.Reason, problem.Accepts]);
        IEnumerable<IReadOnlyList<TableCell>> held = report.Held.Select(row => (IReadOnlyList<TableCell>)
            [row.Place.ToString()!, string.Join(" | ", row.Cells.Select(cell => cell.Text)), "awaits a decision", Sentences.List(row.DecisionIds)]);
        return new Table(report.ToString(), [new("where"), new("as written"), new("reason"), new("accepted, or decision")], [.. refused, .. held])
        {
            Notes = [.. report.Warnings.Select(warning => warning.ToString()), .. report.Notes],
        };
    }

    private static IReadOnlyList<TableCell> Row(string label, SquadChangeRow row, NumberFormat format) => row.Change.Match<IReadOnlyList<TableCell>>(
        change =>
        [
            label, TableCell.Shown(SignedWithUnit(change.Change, format), change.Change.Value), SignedLimits(change.Change, format), change.Verdict.Words(), AtOtherSizes(change),
            row.AdjustedPValue is { } p ? P(p.Value) : TableCell.Nothing,
        ],
        refusal => [label, Sentences.NoTestThisWeek(refusal) is { } absent ? absent : TableCell.Refused(refusal), TableCell.Nothing, TableCell.Nothing, TableCell.Nothing, TableCell.Nothing]);

    /// <summary>Whether the verdict hangs on what is called worthwhile.</summary>
    private static string AtOtherSizes(AthleteChangeResult change)
    {
        string[] others =
        [
            .. change.VerdictAtHalf == change.Verdict ? Array.Empty<string>() : [$"half: {change.VerdictAtHalf.Words()}"],
            .. change.VerdictAtDouble == change.Verdict ? Array.Empty<string>() : [$"twice: {change.VerdictAtDouble.Words()}"],
        ];
        return others.Length == 0 ? "the same" : string.Join("; ", others);
    }

    private static string SignedWithUnit(Estimate change, NumberFormat format) => NumberFormat.WithUnit(NumberFormat.WithSign(change.Value, format.Decimals(change)), change.Unit);

    private static string SignedLimits(Estimate change, NumberFormat format) => change.Interval is { } interval
        ? $"{NumberFormat.WithSign(interval.Lower, format.Decimals(change))} to {NumberFormat.WithSign(interval.Upper, format.Decimals(change))}"
        : "–";

    private static IEnumerable<string> Levels(SquadChangesResult changes) =>
        changes.Rows.Select(row => row.Change.Match<AthleteChangeResult?>(change => change, _ => null)).OfType<AthleteChangeResult>().Take(1).Select(change =>
            $"{change.Change.ConfidenceLevel} intervals; negative is faster. {change.Worthwhile}.");

    private static IEnumerable<Session> Counting(Squad squad) => squad.Sessions.Where(session => !session.IsVoid);

    private static TableCell Code(Squad squad, Session session) => squad.Athlete(session.AthleteId).Code;

    private static TableCell Day(Session session) => session.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Place(CellProblem problem)
    {
        var sheet = problem.Sheet is null ? "" : $", sheet {problem.Sheet}";
        var column = problem.Column is null ? "" : string.Create(CultureInfo.InvariantCulture, $", column {problem.ColumnNumber} {problem.Column}");
        return string.Create(CultureInfo.InvariantCulture, $"{problem.File}{sheet}, line {problem.Line}{column}");
    }
}
