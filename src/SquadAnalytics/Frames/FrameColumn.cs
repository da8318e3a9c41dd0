using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Frames;

/// <summary>One column of a <see cref="Frame"/>: a name, the type of its cells, and the cells, null where nothing stands.</summary>
public sealed class FrameColumn
{
    private readonly Array _cells;

    private FrameColumn(string name, FrameType type, Array cells)
    {
        Name = Require.Text(name);
        Type = type;
        _cells = cells;
    }

    /// <summary>Its name; where the cells have a unit the name ends in it, as in <c>total_s</c>.</summary>
    public string Name { get; }

    /// <summary>What its cells are.</summary>
    public FrameType Type { get; }

    /// <summary>What it holds, in words, or null.</summary>
    public string? Description { get; init; }

    /// <summary>The unit as printed, read from the end of the name: <c>s</c> for <c>total_s</c>; null for words and plain numbers.</summary>
    public string? Unit => Type is FrameType.Number or FrameType.WholeNumber ? ColumnUnit.Of(Name) : null;

    /// <summary>The name in words, without the unit: <c>late contrast</c> for <c>late_contrast_s</c>.</summary>
    public string Words => ColumnUnit.Words(Name, Unit);

    /// <summary>Number of cells.</summary>
    public int Count => _cells.Length;

    /// <summary>Whether its cells are numbers, whole or not.</summary>
    public bool IsNumeric => Type is FrameType.Number or FrameType.WholeNumber;

    /// <summary>One cell, null where nothing stands.</summary>
    /// <param name="row">The row, from 0.</param>
    public object? this[int row] => _cells switch
    {
        double?[] numbers => numbers[row],
        string?[] texts => texts[row],
        long?[] integers => integers[row],
        DateOnly?[] dates => dates[row],
        DateTime?[] moments => moments[row],
        _ => ((bool?[])_cells)[row],
    };

    /// <summary>The cells of a numeric column as numbers.</summary>
    /// <exception cref="InvalidOperationException">The column holds something else.</exception>
    public IReadOnlyList<double?> Numbers => _cells switch
    {
        double?[] numbers => numbers,
        long?[] integers => Array.ConvertAll(integers, static number => (double?)number),
        _ => throw Other("numbers"),
    };

    /// <summary>The cells of a column of whole numbers.</summary>
    /// <exception cref="InvalidOperationException">The column holds something else.</exception>
    public IReadOnlyList<long?> Integers => _cells as long?[] ?? throw Other("whole numbers");

    /// <summary>The cells of a column of days; of moments, their days.</summary>
    /// <exception cref="InvalidOperationException">The column holds something else.</exception>
    public IReadOnlyList<DateOnly?> Dates => _cells switch
    {
        DateOnly?[] dates => dates,
        DateTime?[] moments => Array.ConvertAll(moments, static moment => moment is { } known ? DateOnly.FromDateTime(known) : (DateOnly?)null),
        _ => throw Other("dates"),
    };

    /// <summary>The cells of a column of moments.</summary>
    /// <exception cref="InvalidOperationException">The column holds something else.</exception>
    public IReadOnlyList<DateTime?> Moments => _cells as DateTime?[] ?? throw Other("moments");

    /// <summary>The cells of a column of true or false.</summary>
    /// <exception cref="InvalidOperationException">The column holds something else.</exception>
    public IReadOnlyList<bool?> Flags => _cells as bool?[] ?? throw Other("true or false");

    /// <summary>The cells as texts, whatever they are: dates as year-month-day, numbers with a decimal point.</summary>
    public IReadOnlyList<string?> Texts => _cells as string?[] ?? [.. Enumerable.Range(0, Count).Select(row => Text(this[row]))];

    /// <summary>A column of text.</summary>
    public static FrameColumn OfTexts(string name, IEnumerable<string?> cells) => new(name, FrameType.Text, cells.ToArray());

    /// <summary>A column of numbers.</summary>
    /// <exception cref="ArgumentException">A cell is not a finite number.</exception>
    public static FrameColumn OfNumbers(string name, IEnumerable<double?> cells)
    {
        var numbers = cells.ToArray();
        return Array.TrueForAll(numbers, static number => number is not { } known || double.IsFinite(known))
            ? new(name, FrameType.Number, numbers)
            : throw new ArgumentException($"Column {name} holds a number that is not finite; leave such a cell empty (null).", nameof(cells));
    }

    /// <summary>A column of whole numbers.</summary>
    public static FrameColumn OfIntegers(string name, IEnumerable<long?> cells) => new(name, FrameType.WholeNumber, cells.ToArray());

    /// <summary>A column of days.</summary>
    public static FrameColumn OfDates(string name, IEnumerable<DateOnly?> cells) => new(name, FrameType.Date, cells.ToArray());

    /// <summary>A column of moments.</summary>
    public static FrameColumn OfMoments(string name, IEnumerable<DateTime?> cells) => new(name, FrameType.Moment, cells.ToArray());

    /// <summary>A column of true or false.</summary>
    public static FrameColumn OfFlags(string name, IEnumerable<bool?> cells) => new(name, FrameType.Flag, cells.ToArray());

    /// <summary>Name, type and number of cells.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}: {Type}, {Count} cells");

    internal FrameColumn With(string? description) => new(Name, Type, _cells) { Description = description };

    private static string? Text(object? cell) => cell switch
    {
        null => null,
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        DateTime moment => moment.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
        bool flag => flag ? "true" : "false",
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString(),
    };

    private InvalidOperationException Other(string wanted) => new($"Column {Name} does not hold {wanted}: it is of type {Type}.");
}
