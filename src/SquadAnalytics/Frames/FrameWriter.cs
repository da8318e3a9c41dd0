using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Frames;

/// <summary>Takes the rows of one table into the columns of a frame.</summary>
internal sealed class FrameWriter : TableWriter
{
    private readonly Table _table;
    private readonly List<string?>?[] _texts;
    private readonly List<double?>?[] _numbers;
    private readonly List<long?>?[] _integers;
    private readonly List<DateOnly?>?[] _dates;
    private readonly List<DateTime?>?[] _moments;
    private readonly List<bool?>?[] _flags;
    private int _field;

    private FrameWriter(Table table)
    {
        _table = table;
        _texts = Lists<string?>(ColumnType.String);
        _numbers = Lists<double?>(ColumnType.Number);
        _integers = Lists<long?>(ColumnType.Integer);
        _dates = Lists<DateOnly?>(ColumnType.Date);
        _moments = Lists<DateTime?>(ColumnType.DateTime);
        _flags = Lists<bool?>(ColumnType.Boolean);
    }

    /// <summary>The frame of a table with one row for each item.</summary>
    public static Frame Write<T>(Table table, IEnumerable<T> items, Action<TableWriter, T> row)
    {
        var writer = new FrameWriter(table);
        foreach (var item in items)
        {
            writer._field = 0;
            row(writer, item);
        }

        return new Frame([.. table.Columns.Select(writer.ColumnAt)]);
    }

    public override TableWriter Text(string? text) => Put(_texts, text);

    public override TableWriter Date(DateOnly? date) => Put(_dates, date);

    public override TableWriter Moment(DateTimeOffset moment) => Put(_moments, moment.UtcDateTime);

    public override TableWriter Number(double? number) => Put(_numbers, number);

    public override TableWriter Integer(long? number) => Put(_integers, number);

    public override TableWriter Flag(bool flag) => Put(_flags, flag);

    private FrameWriter Put<T>(List<T>?[] lists, T cell)
    {
        var list = lists[_field] ?? throw new InvalidOperationException($"Column {_table.Columns[_field].Name} of table {_table.Name} does not hold this kind of value.");
        list.Add(cell);
        _field++;
        return this;
    }

    private FrameColumn ColumnAt(Column column, int at)
    {
        var made = column.Type switch
        {
            ColumnType.Number => FrameColumn.OfNumbers(column.Name, _numbers[at]!),
            ColumnType.Integer => FrameColumn.OfIntegers(column.Name, _integers[at]!),
            ColumnType.Date => FrameColumn.OfDates(column.Name, _dates[at]!),
            ColumnType.DateTime => FrameColumn.OfMoments(column.Name, _moments[at]!),
            ColumnType.Boolean => FrameColumn.OfFlags(column.Name, _flags[at]!),
            _ => FrameColumn.OfTexts(column.Name, _texts[at]!),
        };
        return made.With(column.Description);
    }

    private List<T>?[] Lists<T>(ColumnType type) => [.. _table.Columns.Select(column => column.Type == type ? new List<T>() : null)];
}
