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
}
