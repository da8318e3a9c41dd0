using System.Collections;
using System.Globalization;
using System.Numerics;
using DuckDB.NET.Data;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Archive;

/// <summary>Gathers one column of a result.</summary>
internal sealed class ResultColumn
{
    private readonly string _name;
    private readonly int _at;
    private readonly FrameType _type;
    private readonly List<object?> _cells = [];

    public ResultColumn(string name, int at, Type type)
    {
        _name = name;
        _at = at;
        _type = TypeOf(type);
    }

    public void Take(DuckDBDataReader reader) => _cells.Add(reader.IsDBNull(_at) ? null : Plain(reader.GetValue(_at)));

    public FrameColumn ToColumn() => _type switch
    {
        FrameType.Number => FrameColumn.OfNumbers(_name, _cells.Select(static cell => (double?)cell)),
        FrameType.WholeNumber => FrameColumn.OfIntegers(_name, _cells.Select(static cell => (long?)cell)),
        FrameType.Date => FrameColumn.OfDates(_name, _cells.Select(static cell => (DateOnly?)cell)),
        FrameType.Moment => FrameColumn.OfMoments(_name, _cells.Select(static cell => (DateTime?)cell)),
        FrameType.Flag => FrameColumn.OfFlags(_name, _cells.Select(static cell => (bool?)cell)),
        _ => FrameColumn.OfTexts(_name, _cells.Select(static cell => (string?)cell)),
    };

    private static FrameType TypeOf(Type type) =>
        type == typeof(bool) ? FrameType.Flag
        : type == typeof(DateOnly) ? FrameType.Date
        : type == typeof(DateTime) || type == typeof(DateTimeOffset) ? FrameType.Moment
        : type == typeof(double) || type == typeof(float) || type == typeof(decimal) ? FrameType.Number
        : type == typeof(BigInteger) || (type.IsPrimitive && type != typeof(char)) ? FrameType.WholeNumber
        : FrameType.Text;

    private object Plain(object cell)
    {
        switch (_type)
        {
            case FrameType.Number:
                var number = Convert.ToDouble(cell, CultureInfo.InvariantCulture);
                return double.IsFinite(number) ? number : throw new QueryException(string.Create(CultureInfo.InvariantCulture, $"Row {_cells.Count + 1} of column {_name} is not a finite number; leave such a cell empty, for example with NULLIF around a divisor that may be 0."));
            case FrameType.WholeNumber:
                try
                {
                    return cell is BigInteger large ? (long)large : Convert.ToInt64(cell, CultureInfo.InvariantCulture);
                }
                catch (OverflowException error)
                {
                    throw new QueryException(string.Create(CultureInfo.InvariantCulture, $"Row {_cells.Count + 1} of column {_name} is a whole number too large to be held; cast it to DOUBLE."), null, error);
                }

            case FrameType.Moment:
                return cell is DateTimeOffset moment ? moment.UtcDateTime : cell;
            case FrameType.Date or FrameType.Flag:
                return cell;
            default:
                return Text(cell);
        }
    }

    private static string Text(object? cell) => cell switch
    {
        null => "",
        string text => text,
        IDictionary map => "{" + string.Join(", ", map.Keys.Cast<object>().Select(key => $"{Text(key)}: {Text(map[key])}")) + "}",
        IEnumerable list => "[" + string.Join(", ", list.Cast<object?>().Select(Text)) + "]",
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };
}
