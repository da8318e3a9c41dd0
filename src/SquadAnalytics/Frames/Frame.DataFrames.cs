using Microsoft.Data.Analysis;

namespace SquadAnalytics.Frames;

/// <content>To and from <see cref="DataFrame"/>.</content>
public sealed partial class Frame
{
    /// <summary>The frame as a <see cref="DataFrame"/>, for display and for other libraries; dates become moments at midnight, which that type knows.</summary>
    /// <remarks>Its own arithmetic is not used here and should not be relied on: a grouped mean, for one, counts empty cells as 0.</remarks>
    public DataFrame ToDataFrame() => new([.. Columns.Select(static column => ToDataFrameColumn(column))]);

    /// <summary>The frame of a <see cref="DataFrame"/>.</summary>
    /// <exception cref="ArgumentException">A column is of a type that a frame does not hold, or a cell is not a finite number.</exception>
    public static Frame Of(DataFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return new Frame([.. frame.Columns.Select(static column => FromDataFrameColumn(column))]);
    }

    /// <summary>Moments that are all at midnight are days: the other library has no type for those.</summary>
    private static FrameColumn FromDataFrameColumn(DataFrameColumn column)
    {
        var type = CellTypes.Of(column.DataType) ?? throw new ArgumentException($"Column {column.Name} holds values of type {column.DataType.Name}, which a frame does not know.", nameof(column));
        object?[] cells = [.. Enumerate(column).Select(CellTypes.Plain)];
        return type == FrameType.Moment && Array.TrueForAll(cells, static cell => cell is not DateTime moment || moment.TimeOfDay == TimeSpan.Zero)
            ? Build(column.Name, FrameType.Date, cells.Select(static cell => cell is DateTime moment ? (object?)DateOnly.FromDateTime(moment) : null))
            : Build(column.Name, type, cells);
    }

    private static DataFrameColumn ToDataFrameColumn(FrameColumn column) => column.Type switch
    {
        FrameType.Number => new DoubleDataFrameColumn(column.Name, column.Numbers),
        FrameType.WholeNumber => new Int64DataFrameColumn(column.Name, column.Integers),
        FrameType.Date => new DateTimeDataFrameColumn(column.Name, column.Dates.Select(static date => date?.ToDateTime(TimeOnly.MinValue))),
        FrameType.Moment => new DateTimeDataFrameColumn(column.Name, column.Moments),
        FrameType.Flag => new BooleanDataFrameColumn(column.Name, column.Flags),
        _ => new StringDataFrameColumn(column.Name, column.Texts),
    };

    private static IEnumerable<object?> Enumerate(DataFrameColumn column)
    {
        for (long row = 0; row < column.Length; row++) yield return column[row];
    }
}
