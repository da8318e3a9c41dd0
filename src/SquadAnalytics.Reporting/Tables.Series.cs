using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>A series before and from a date: jump, change of slope, effect at the end; Newey-West beside least squares.</summary>
    public static Table InterruptedSeries(InterruptedSeriesResult series, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(format);
        IReadOnlyList<TableCell> Line(string name, Estimate plain, Estimate? serial) =>
            [name, TableCell.Shown(format.Value(plain), plain.Value), format.Limits(plain), serial is null ? TableCell.Nothing : format.Limits(serial)];
        return new Table(
            $"Before and from {Date(series.From)}",
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("interval that allows for neighbouring tests being alike")],
            [
                Line("slope before", series.SlopeBefore, series.SerialSlopeBefore),
                Line("jump at that date", series.LevelChange, series.SerialLevelChange),
                Line("change of the slope", series.SlopeChange, series.SerialSlopeChange),
                Line("difference at the last test from the line before carried on", series.EffectAtEnd, null),
            ])
        {
            Notes =
            [
                $"{series.LevelChange.ConfidenceLevel} intervals; negative is faster. {(series.DurbinWatson is { } statistic ? $"Durbin-Watson {NumberFormat.Fixed(statistic, 2)}, lag-1 correlation {NumberFormat.Fixed(series.SerialCorrelation ?? 0, 2)}." : "All tests lie on the lines.")}",
                .. series.Notes,
            ],
        };
    }

    /// <summary>One athlete's season as a drifting level: the test and the level week by week.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="season">The season.</param>
    /// <param name="format">How numbers are written.</param>
    public static Table SeasonLevel(string athlete, SeasonLevelResult season, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"The level of {athlete} behind the tests",
            [new("week from"), TableColumn.Figures("session total", "s"), TableColumn.Figures("level as known then", "s"), TableColumn.Figures("interval", "s"), TableColumn.Figures("level in hindsight", "s"), TableColumn.Figures("interval", "s")],
            [.. season.Points.Select(point => (IReadOnlyList<TableCell>)
            [
                Date(point.Monday), point.TotalSeconds is { } total ? TableCell.Figure(total, format.EntryDecimals) : TableCell.Nothing,
                TableCell.Figure(point.Level.Value, format.Decimals(point.Level)), Limits(point.Level, format), TableCell.Figure(point.InHindsight.Value, format.Decimals(point.InHindsight)), Limits(point.InHindsight, format),
            ])])
        {
            Notes =
            [
                $"{season.Latest.ConfidenceLevel} intervals. What fits best: noise of a test {format.Spread(new Seconds(season.Noise.Value))}, drift from week to week {format.Spread(new Seconds(season.WeeklyDrift.Value))} (standard deviations); a new test has the weight {NumberFormat.Fixed(season.SteadyWeight, 2)}.",
                .. season.Notes,
            ],
        };
    }
}
