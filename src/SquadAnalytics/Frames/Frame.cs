using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Frames;

/// <summary>
/// A table of values by columns: what a query returns, and what results become for display and for other programs. It holds values and
/// computes nothing.
/// </summary>
public sealed partial class Frame
{
    private readonly Dictionary<string, FrameColumn> _byName;

    /// <summary>Makes a frame.</summary>
    /// <param name="columns">Its columns, equally long and named differently; upper and lower case do not tell names apart.</param>
    /// <exception cref="ArgumentException">The columns are not equally long, or two have the same name.</exception>
    public Frame(params IReadOnlyList<FrameColumn> columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        Columns = [.. columns];
        Count = columns.Count == 0 ? 0 : columns[0].Count;
        _byName = new Dictionary<string, FrameColumn>(StringComparer.OrdinalIgnoreCase);
        foreach (var column in Columns)
        {
            if (column.Count != Count) throw new ArgumentException($"Column {column.Name} has {column.Count} cells, but column {columns[0].Name} has {Count}.", nameof(columns));
            if (!_byName.TryAdd(column.Name, column)) throw new ArgumentException($"Two columns are named {column.Name}.", nameof(columns));
        }
    }

    /// <summary>Its columns in order.</summary>
    public IReadOnlyList<FrameColumn> Columns { get; }

    /// <summary>Number of rows.</summary>
    public int Count { get; }

    /// <summary>What it shows, in words, or null.</summary>
    public string? Title { get; init; }

    /// <summary>A column by its name.</summary>
    /// <param name="column">The name; upper and lower case do not matter.</param>
    /// <exception cref="ArgumentException">There is no such column; the message lists those there are.</exception>
    public FrameColumn this[string column] => _byName.TryGetValue(Require.Text(column), out var found)
        ? found
        : throw new ArgumentException($"There is no column {column}; there are {string.Join(", ", Columns.Select(one => one.Name))}.", nameof(column));

    /// <summary>The same frame under a title.</summary>
    /// <param name="title">What it shows, in words.</param>
    public Frame Titled(string title) => new(Columns) { Title = Require.Text(title) };

    /// <summary>The first rows.</summary>
    /// <param name="rows">How many at most; 0 or more.</param>
    public Frame First(int rows)
    {
        if (Require.AtLeast(0, rows) >= Count) return this;
        return new Frame([.. Columns.Select(column => Build(column.Name, column.Type, Enumerable.Range(0, rows).Select(row => column[row]), column.Description))]) { Title = Title };
    }

    /// <summary>Number of rows and the names of the columns.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Count} {(Count == 1 ? "row" : "rows")}: {string.Join(", ", Columns.Select(column => column.Name))}");

    internal static FrameColumn Build(string name, FrameType type, IEnumerable<object?> cells, string? description = null)
    {
        var column = type switch
        {
            FrameType.Number => FrameColumn.OfNumbers(name, cells.Select(static cell => cell is null ? null : (double?)Convert.ToDouble(cell, CultureInfo.InvariantCulture))),
            FrameType.WholeNumber => FrameColumn.OfIntegers(name, cells.Select(static cell => cell is null ? null : (long?)Convert.ToInt64(cell, CultureInfo.InvariantCulture))),
            FrameType.Date => FrameColumn.OfDates(name, cells.Select(static cell => (DateOnly?)cell)),
            FrameType.Moment => FrameColumn.OfMoments(name, cells.Select(static cell => (DateTime?)cell)),
            FrameType.Flag => FrameColumn.OfFlags(name, cells.Select(static cell => (bool?)cell)),
            _ => FrameColumn.OfTexts(name, cells.Select(static cell => cell?.ToString())),
        };
        return description is null ? column : column.With(description);
    }
}
