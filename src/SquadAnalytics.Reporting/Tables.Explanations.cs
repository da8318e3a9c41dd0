using SquadAnalytics.Change;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>What explains the slow-down: the candidates side by side, and what would tell them apart.</summary>
    public static Table Explanations(ExplanationsResult explanations, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(explanations);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"What explains the slow-down after set {Count(explanations.AfterSet)}?",
            [new("candidate"), new("standing"), TableColumn.Figures("at most, if it were the only cause", "s"), TableColumn.Figures("interval", "s"), TableColumn.Figures("adjusted p")],
            [.. explanations.Candidates.Select(candidate => (IReadOnlyList<TableCell>)
            [
                candidate.Name,
                candidate.Standing.Words(),
                candidate.Accounts.Match(seconds => seconds.Upper < 0 ? TableCell.Shown("none", seconds.Value) : Change(seconds, format), _ => "not estimable"),
                candidate.Accounts.Match(seconds => seconds.Interval is null ? TableCell.Nothing : Limits(seconds, format), _ => TableCell.Nothing),
                candidate.PValue is { } p ? P(p.Value) : "not tested",
            ])])
        {
            Notes = [explanations.Conclusion, .. Parts(explanations, format), "One station: the interval holds for all stations together, so it is wider than in the table of stations. Too fast a start: seconds that a start one SD faster than usual costs in each set after the first. What came before: seconds of slow-down that go with one SD more of it.", .. explanations.Notes],
        };
    }

    /// <summary>What speaks for and against each candidate, and what would tell it from its neighbour.</summary>
    public static Table WhatWouldSettleIt(ExplanationsResult explanations)
    {
        ArgumentNullException.ThrowIfNull(explanations);
        return new Table(
            "For, against, and what would settle it",
            [new("candidate"), new("in these tests"), new("would settle it")],
            [.. explanations.Candidates.Select(candidate => (IReadOnlyList<TableCell>)
                [candidate.Name, Lines([.. candidate.Supports.Select(text => "For: " + text), .. candidate.Contradicts.Select(text => "Against: " + text)]), candidate.Separates])]);
    }

    /// <summary>How many more tests a question takes.</summary>
    public static Table MoreTests(MoreTestsResult result, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            result.Question,
            [TableColumn.Figures("further tests"), TableColumn.Figures("chance of showing it"), TableColumn.Figures("interval")],
            [.. result.Curve.Select(point => (IReadOnlyList<TableCell>)
                [Count(point.Further), TableCell.Figure(point.Power.Value, 2), point.Power.Interval is null ? TableCell.Nothing : Limits(point.Power, format)])])
        {
            Notes = [result.Needed.Match(needed => $"At least {NumberFormat.Fixed(result.Wanted, 2)} with {Sentences.Plural((int)needed.Value, "further test")}.", Sentences.Refusal), .. result.Assumptions],
        };
    }

    /// <summary>Drift and jump beside each other, which add up to the slow-down.</summary>
    private static IEnumerable<string> Parts(ExplanationsResult explanations, NumberFormat format)
    {
        if (!explanations[ExplanationCause.LateBreak].Effect.TryGet(out var step)) yield break;
        yield return $"Drift and jump beside each other: of the slow-down of {format.Value(explanations.Slowdown)}, {format.WithInterval(step)} is a jump after set {Count(explanations.AfterSet)} and the rest, {NumberFormat.WithUnit(NumberFormat.Fixed(explanations.Slowdown.Value - step.Value, format.Decimals(step)), step.Unit)}, a drift.";
    }

    private static TableCell Lines(IReadOnlyList<string> lines) => lines.Count == 0 ? TableCell.Nothing : TableCell.Words(string.Join(" ", lines));
}
