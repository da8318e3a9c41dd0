using SquadAnalytics.Change;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>The late slow-down of one athlete: both contrasts with interval and one-sided p-value.</summary>
    public static Table LateSlowdown(LateSlowdownResult slowdown, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(slowdown);
        ArgumentNullException.ThrowIfNull(format);
        var sets = slowdown.Selection.Sessions[0].Protocol.Sets;
        var how = slowdown.Choice == BreakChoice.FoundBySearch ? "found by looking, the search charged in interval and p-value" : "named beforehand";
        return new Table(
            $"Slower after set {Count(slowdown.AfterSet)}? ({how})",
            [new("contrast"), TableColumn.Figures("estimate", slowdown.LateContrast.Unit.Symbol()), TableColumn.Figures("interval", slowdown.LateContrast.Unit.Symbol()), TableColumn.Figures("p, one-sided")],
            [
                Contrast($"{Sentences.Sets(slowdown.AfterSet + 1, sets)} minus {Sentences.Sets(1, slowdown.AfterSet)}", slowdown.LateContrast, slowdown.LatePValue, format),
                Contrast("least that a jump must explain, if a drift takes all it can", slowdown.KinkContrast, slowdown.KinkPValue, format),
            ])
        {
            Notes = [$"{Sentences.Plural(slowdown.Sessions.Count, "test")}; {slowdown.LateContrast.ConfidenceLevel} intervals; positive is slower.", .. slowdown.LateContrast.Notes],
        };
    }

    /// <summary>One athlete's change against a baseline, with the verdict at half and twice the smallest worthwhile change beside it.</summary>
    public static Table Change(AthleteChangeResult change, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(format);
        IReadOnlyList<TableCell> Row(string name, SmallestWorthwhileChange worthwhile, ChangeVerdict verdict) =>
            [name, TableCell.Figure(worthwhile.Estimate.Value, format.EntryDecimals + 1), Change(change.Change, format), Limits(change.Change, format), verdict.Words()];
        return new Table(
            $"{(change.Later.Count == 1 ? "The latest test" : $"The latest {Count(change.Later.Count)} tests")} against {(change.Baseline.Count == 1 ? "the test before" : $"the mean of the {Count(change.Baseline.Count)} tests before")}",
            [new("smallest worthwhile change"), TableColumn.Figures("size", change.Worthwhile.Estimate.Unit.Symbol()), TableColumn.Figures("change", change.Change.Unit.Symbol()), TableColumn.Figures("interval", change.Change.Unit.Symbol()), new("verdict")],
            [
                Row("as chosen", change.Worthwhile, change.Verdict),
                Row("half of it", change.Worthwhile.Times(0.5), change.VerdictAtHalf),
                Row("twice of it", change.Worthwhile.Times(2), change.VerdictAtDouble),
            ])
        {
            Notes = [$"{change.Change.ConfidenceLevel} interval; negative is faster. Test noise (typical error): {format.Value(change.TypicalError)}.", .. change.Change.Notes],
        };
    }

    /// <summary>A p-value in a column that says so: <c>.016</c>, <c>&lt; .001</c>.</summary>
    private static TableCell P(double p) => TableCell.Shown(NumberFormat.PValue(p).Replace("p ", "", StringComparison.Ordinal).Replace("= ", "", StringComparison.Ordinal), p);

    private static IReadOnlyList<TableCell> Contrast(string name, Estimate contrast, Estimate p, NumberFormat format) =>
        [name, Change(contrast, format), Limits(contrast, format), P(p.Value)];
}
