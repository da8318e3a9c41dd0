using SquadAnalytics.Load;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>Weekly load of one athlete; weeks with a day that is not confirmed say so.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="weeks">The weeks in order; at least one.</param>
    public static Table WeeklyLoads(string athlete, IReadOnlyList<WeekOfLoad> weeks)
    {
        ArgumentNullException.ThrowIfNull(weeks);
        if (weeks.Count == 0) throw new ArgumentException("There is no week to list.", nameof(weeks));
        return new Table(
            $"Weekly training load of {athlete}",
            [new("week from"), TableColumn.Figures("sum", "AU"), TableColumn.Figures("monotony"), TableColumn.Figures("strain", "AU")],
            [.. weeks.Select(week => week.Load.Match<IReadOnlyList<TableCell>>(
                load => [Date(week.From), TableCell.Figure(load.Sum.Value, 0), load.Monotony.Match(ratio => TableCell.Figure(ratio.Value, 2), TableCell.Refused), load.Strain.Match(strain => TableCell.Figure(strain.Value, 0), TableCell.Refused)],
                refusal => [Date(week.From), TableCell.Refused(refusal), TableCell.Nothing, TableCell.Nothing]))])
        {
            Notes = [Sentences.LoadUnits, "Monotony: mean daily load / SD of the seven days; strain: sum × monotony.", .. weeks.Select(week => week.Load.Match(load => load.Notes, _ => [])).FirstOrDefault(notes => notes.Count > 0) ?? []],
        };
    }

    /// <summary>Whether load before the test and session total go together.</summary>
    public static Table LoadAssociation(LoadAssociationResult association, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(association);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"Load before the test and session total, {association.Form.Words()}",
            [new("load"), TableColumn.Figures("correlation"), TableColumn.Figures("interval"), TableColumn.Figures("adjusted p"), TableColumn.Figures("total per 100 AU", "s"), TableColumn.Figures("interval", "s"), TableColumn.Figures("tests"), TableColumn.Figures("tests without known load")],
            [.. association.Rows.Select(row => row.Correlation.Match<IReadOnlyList<TableCell>>(
                r =>
                [
                    row.Window.ToString(), Change(r, format), Limits(r, format), row.AdjustedPValue is { } p ? P(p.Value) : TableCell.Nothing,
                    row.Slope.Match(slope => TableCell.SignedFigure(100 * slope.Value, 2), TableCell.Refused),
                    row.Slope.Match(slope => slope.Interval is { } limits ? $"{NumberFormat.Fixed(100 * limits.Lower, 2)} to {NumberFormat.Fixed(100 * limits.Upper, 2)}" : TableCell.Nothing, _ => TableCell.Nothing),
                    Count(r.Observations), Count(row.TestsWithoutLoad),
                ],
                refusal => [row.Window.ToString(), TableCell.Refused(refusal), TableCell.Nothing, TableCell.Nothing, TableCell.Nothing, TableCell.Nothing, TableCell.Nothing, Count(row.TestsWithoutLoad)]))])
        {
            Notes = [.. Levels(association), "Positive: more load, slower.", Sentences.LoadUnits, .. association.Notes],
            OverAthletes = association.Rows.Where(row => row.Athletes > 1).Select(row => (int?)row.Athletes).Min(),
        };
    }

    /// <summary>How session totals differ with circumstances before the test.</summary>
    public static Table Covariates(CovariateModelResult model, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"Session total and what came before the test: {Sentences.Plural(model.Tests, "test")} of {Sentences.Plural(model.Athletes, "athlete")}",
            [new("circumstance"), TableColumn.Figures("within athletes"), TableColumn.Figures("interval"), TableColumn.Figures("between athletes"), TableColumn.Figures("interval"), TableColumn.Figures("tests without it")],
            [
                .. model.Effects.Select(effect => (IReadOnlyList<TableCell>)[effect.Circumstance.Words(), .. Pair(effect.Within, format), .. Pair(effect.Between, format), Count(effect.TestsWithout)]),
                .. model.Trend is { } trend ? (IReadOnlyList<TableCell>[])[["trend of the squad", .. Pair(trend, format), TableCell.Nothing, TableCell.Nothing, TableCell.Nothing]] : [],
            ])
        {
            OverAthletes = model.Athletes,
            Notes = [$"{model.Model.ConfidenceLevel} intervals; negative is faster.", .. model.Notes],
        };
    }

    private static IEnumerable<string> Levels(LoadAssociationResult association) =>
        association.Rows.Select(row => row.Correlation.Match<Estimate?>(r => r, _ => null)).OfType<Estimate>().Take(1).Select(r => $"{r.ConfidenceLevel} intervals; {r.Method}.");

    private static TableCell[] Pair(Answer<Estimate> answer, NumberFormat format) => answer.Match<TableCell[]>(
        estimate => [TableCell.Shown(SignedWithUnit(estimate, format), estimate.Value), Limits(estimate, format)],
        refusal => [TableCell.Refused(refusal), TableCell.Nothing]);
}
