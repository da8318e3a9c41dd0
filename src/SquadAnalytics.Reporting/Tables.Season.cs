using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>A squad's season: trend, level, and how athletes differ.</summary>
    public static Table SquadTrend(SquadTrendResult season, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"The squad's season: {Sentences.Plural(season.Athletes.Count, "athlete")}, {Sentences.Plural(season.Slope.Observations, "test")} over {NumberFormat.Fixed(season.SpanWeeks, 0)} weeks",
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("degrees of freedom"), TableColumn.Figures("p")],
            [
                Row("change of the session total per week", season.Slope, format),
                Row("the same in percent", season.RelativeSlope, format),
                Row("mean of the athletes' own slopes, plain t", season.MeanOfOwnSlopes, format),
                Row($"session total on {Date(season.LevelOn)}", season.Level with { PValue = null }, format),
                Row("SD of a test about its athlete's line", season.ResidualStandardDeviation, format),
                Row("SD between athletes: level", season.LevelSpread, format),
                Row("SD between athletes: slope", season.SlopeSpread, format),
                Row("correlation of level and slope", season.Correlation, format),
            ])
        {
            OverAthletes = season.Athletes.Count,
            Notes = [$"{season.Slope.Method}; {season.Slope.ConfidenceLevel} intervals; negative is faster.", .. season.Notes],
        };
    }

    /// <summary>Each athlete's level and slope in the squad's season, pulled toward the squad; in the order of the squad, because it is no ranking.</summary>
    public static Table AthleteTrends(SquadTrendResult season, Squad squad, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(format);
        var rows = season.Athletes.ToDictionary(athlete => athlete.AthleteId, StringComparer.Ordinal);
        return new Table(
            "Levels and slopes of the athletes, pulled toward the squad",
            [
                new("athlete"), TableColumn.Figures("tests"), TableColumn.Figures("level", "s"), TableColumn.Figures("interval", "s"), TableColumn.Figures("slope", "s/week"), TableColumn.Figures("interval", "s/week"),
                TableColumn.Figures("own tests alone", "s/week"),
            ],
            [.. squad.Athletes.Where(athlete => rows.ContainsKey(athlete.Id)).Select(athlete => (Athlete: athlete, Trend: rows[athlete.Id])).Select(row => (IReadOnlyList<TableCell>)
            [
                row.Athlete.LabelOn(season.LevelOn), Count(row.Trend.Tests), TableCell.Figure(row.Trend.Level.Value, format.EntryDecimals), Limits(row.Trend.Level, format),
                row.Trend.Slope.Match(slope => Change(slope, format), TableCell.Refused), row.Trend.Slope.Match(slope => Limits(slope, format), _ => TableCell.Nothing),
                row.Trend.OwnSlope.Match(slope => Change(slope, format), TableCell.Refused),
            ])])
        {
            Notes = [$"{season.Slope.ConfidenceLevel} intervals. Levels are those of {Date(season.LevelOn)}. Pulled toward the squad: the fewer tests, the more.", .. season.Notes.Where(note => note.StartsWith("Slopes of athletes come", StringComparison.Ordinal))],
        };
    }

    /// <summary>By how much athletes differ in their response.</summary>
    public static Table Responses(ResponseSpreadResult spread, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(spread);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            "Do athletes differ in their response?",
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("degrees of freedom"), TableColumn.Figures("p")],
            [Row("SD of individual responses", spread.StandardDeviation, format)])
        {
            OverAthletes = spread.StandardDeviation.Observations,
            Notes = [$"{spread.StandardDeviation.Method}; {spread.StandardDeviation.ConfidenceLevel} interval. Nobody is labelled by it.", .. spread.Notes],
        }.WithoutEmptyColumns();
    }

    private static IReadOnlyList<TableCell> Row(string name, Answer<Estimate> answer, NumberFormat format) => answer.Match<IReadOnlyList<TableCell>>(
        estimate =>
        [
            name, TableCell.Shown(format.Value(estimate), estimate.Value), estimate.Interval is null ? TableCell.Nothing : format.Limits(estimate),
            estimate is { Interval: not null, DegreesOfFreedom: { } df } ? TableCell.Figure(df, df == Math.Floor(df) ? 0 : 1) : TableCell.Nothing,
            estimate.PValue is { } p ? P(p) : TableCell.Nothing,
        ],
        refusal => [name, TableCell.Refused(refusal), TableCell.Nothing, TableCell.Nothing, TableCell.Nothing]);
}
