using System.Globalization;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>The two blocks: dates, emphasis, members, and whether they were chosen after the results were seen.</summary>
    public static Table Blocks(BlockPair pair, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(pair);
        ArgumentNullException.ThrowIfNull(squad);
        return new Table(
            pair.AreTwoGroups ? "Two groups side by side" : "The two blocks, in the order of their dates",
            [new("block"), new("dates"), new("emphasis"), new("members"), new("dates chosen")],
            [.. new[] { pair.First, pair.Second }.Select(block => (IReadOnlyList<TableCell>)
            [
                block.Name, $"{Date(block.From)} to {Date(block.To)}", block.Emphasis ?? "not written down",
                block.Members.Count == 0 ? "whole squad" : Count(block.Members.Count), block.DefinedAfterData ? "after the results were seen" : "before the results were seen",
            ])])
        {
            Notes = pair.WasSwapped ? ["The later block was named first: a difference is always later minus earlier, so the order was turned round."] : [],
        };
    }

    /// <summary>Who came, and how often.</summary>
    public static Table BlockAttendance(BlockCircumstancesResult facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        IReadOnlyList<TableCell> Row(BlockAttendance block, BlockDue due) =>
        [
            block.Block.Name, Count(due.Due), Count(due.Done), due.Share is { } share ? TableCell.Figure(share.Value, 0) : TableCell.Nothing,
            Count(block.Athletes), Count(block.Tests), $"{Count(block.FewestTests)} to {Count(block.MostTests)}",
        ];
        return new Table(
            "Who came",
            [
                new("block"), TableColumn.Figures("tests due"), TableColumn.Figures("done"), TableColumn.Figures("share", "%"),
                TableColumn.Figures("athletes with an eligible test"), TableColumn.Figures("eligible tests"), TableColumn.Figures("each"),
            ],
            [Row(facts.First, facts.FirstDue), Row(facts.Second, facts.SecondDue)])
        {
            Notes = ["Due: every week in which the squad tested, for each athlete who does this test, was in the squad and not held back by a head knock. Missing tests are not missing at random: who is tired, hurt or making weight stays away more often."],
        };
    }

    /// <summary>Who is left out of a comparison, and why.</summary>
    public static Table LeftOut(IReadOnlyList<LeftOutAthlete> athletes, Squad squad, DateOnly on, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            "Who is left out, and why",
            [new("athlete"), TableColumn.Figures("tests, first"), TableColumn.Figures("tests, second"), TableColumn.Figures("mean total", "s"), new("reason")],
            [.. athletes.Select(athlete => (IReadOnlyList<TableCell>)
                [squad.Athlete(athlete.AthleteId).LabelOn(on), Count(athlete.FirstTests), Count(athlete.SecondTests), TableCell.Figure(athlete.MeanSeconds, format.EntryDecimals), athlete.Reason])])
        {
            Notes = [athletes.Count == 0 ? "Nobody with a test in these blocks is left out." : "Left out is not slower or faster: compare their mean totals with the others'."],
        };
    }

    /// <summary>The difference of two blocks in several ways: the primary one first, then those that would show whether it hangs on its assumptions.</summary>
    public static Table BlockDifference(BlockComparisonResult comparison, Answer<BlockModelResult> model, Answer<InterruptedSeriesResult> series, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"{comparison.Second.Block} minus {comparison.First.Block}, {Sentences.Plural(comparison.Athletes.Count, "athlete")}",
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("degrees of freedom"), TableColumn.Figures("p")],
            [
                Row("mean of the athletes' differences (primary)", comparison.Change, format),
                Row("the same in percent", comparison.RelativeChange, format),
                Row("rank-based (median of the averages of two)", comparison.RankChange, format),
                ["check of the mean by reshuffling the signs", TableCell.Nothing, TableCell.Nothing, TableCell.Nothing, comparison.SignFlipPValue.Match(p => P(p.Value), TableCell.Refused)],
                Row("weighted by tests, random effects", comparison.WeightedChange, format),
                Row("mixed model, all athletes", model.Select(fit => fit.Change), format),
                Row("jump beyond the season's trend", series.Select(fit => fit.SerialLevelChange), format),
                Row("SD between athletes of true differences", comparison.SpreadOfTrueChanges, format),
                Row("SD of an athlete's tests within a block (training and form in it)", comparison.WithinBlock, format),
            ])
        {
            OverAthletes = comparison.Athletes.Count,
            Notes = [$"{comparison.Change.ConfidenceLevel} intervals; negative is faster.", .. comparison.RankChange.Match(rank => rank.Notes, _ => []), .. series.Match(fit => fit.IsWithoutVerdict ? (IReadOnlyList<string>)["The jump beyond the trend rests on few weeks: shown without a verdict."] : [], _ => [])],
        };
    }

    /// <summary>Each athlete in both blocks.</summary>
    public static Table BlockAthletes(SquadChangesResult changes, Squad squad, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(format);
        var rows = changes.Rows.Where(row => row.Change.IsEstimated).OrderBy(row => row.Change.GetOrThrow().Change.Value).ToList();
        TableCell Block(IReadOnlyList<Session> tests)
        {
            var mean = tests.Sum(test => test.Total.GetOrThrow().Value) / tests.Count;
            return TableCell.Shown($"{NumberFormat.Fixed(mean, format.EntryDecimals)} ({Count(tests.Count)})", mean);
        }

        return new Table(
            "Athlete by athlete",
            [new("athlete"), TableColumn.Figures("first block (tests)", "s"), TableColumn.Figures("second block (tests)", "s"), TableColumn.Figures("difference", "s"), TableColumn.Figures("interval", "s"), new("verdict")],
            [.. rows.Select(row => (Row: row, Change: row.Change.GetOrThrow())).Select(item => (IReadOnlyList<TableCell>)
            [
                squad.Athlete(item.Row.AthleteId).LabelOn(changes.WeekFrom),
                Block(item.Change.Baseline), Block(item.Change.Later), Change(item.Change.Change, format), SignedLimits(item.Change.Change, format),
                item.Row.IsFlagged ? $"{item.Change.Verdict.Words()}, flagged" : item.Change.Verdict.Words(),
            ])])
        {
            Notes = [.. Levels(changes), .. changes.Notes.Take(2)],
        };
    }

    /// <summary>Two groups side by side: levels before and after, and both ways of comparing them.</summary>
    public static Table Groups(BlockGroups groups, Answer<GroupDifferenceResult> difference, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(difference);
        ArgumentNullException.ThrowIfNull(format);
        var named = groups.Rows.GroupBy(row => row.Group, StringComparer.Ordinal).ToList();
        IReadOnlyList<TableCell> Means(IGrouping<string, BeforeAndAfter> group) =>
        [
            group.Key, Count(group.Count()), TableCell.Figure(group.Sum(row => row.Before.Value) / group.Count(), format.EntryDecimals).OfGroup(group.Count()),
            TableCell.Figure(group.Sum(row => row.After.Value) / group.Count(), format.EntryDecimals).OfGroup(group.Count()), TableCell.SignedFigure(group.Sum(row => row.ChangeSeconds) / group.Count(), format.EntryDecimals).OfGroup(group.Count()),
        ];
        return new Table(
            "Two groups before and after",
            [new("group"), TableColumn.Figures("athletes"), TableColumn.Figures("mean before", "s"), TableColumn.Figures("mean after", "s"), TableColumn.Figures("mean change", "s")],
            [.. named.Select(Means)])
        {
            OverAthletes = named.Min(static group => group.Count()),
            Notes = difference.Match<IReadOnlyList<string>>(
                found =>
                [
                    $"{found.Compared} minus {found.Reference}, adjusted for the time before: {format.WithInterval(found.Difference)}.",
                    $"Difference of the mean changes: {format.WithInterval(found.DifferenceOfChanges)}.",
                    .. found.Notes,
                ],
                refused => [Sentences.Refusal(refused)]),
        };
    }
}
