using System.Globalization;
using System.Reflection;

namespace SquadAnalytics.Frames;

/// <content>To and from records.</content>
public sealed partial class Frame
{
    private const BindingFlags Shown = BindingFlags.Public | BindingFlags.Instance;

    /// <summary>A frame with one row for each record and a column for each of its public properties that a cell can hold.</summary>
    /// <remarks>
    /// Names become words with underscores and end in the unit: <c>BestSet</c>, in seconds, is <c>best_set_s</c>. An <see cref="Estimate"/>
    /// becomes its value and the limits of its interval; a refused <see cref="Answer{T}"/> leaves its cells empty. Values of other types,
    /// such as lists, are left out.
    /// </remarks>
    /// <typeparam name="T">The records.</typeparam>
    /// <param name="records">The records, or plain values, which make one column named <c>value</c>.</param>
    /// <exception cref="ArgumentException">No property can be a column, or the estimates of one property are in different units.</exception>
    public static Frame Of<T>(IEnumerable<T> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        object?[] rows = [.. records];
        // A sequence of a base type or of anonymous records says more in its first element than in its declared type.
        var type = rows.FirstOrDefault(static row => row is not null)?.GetType() ?? typeof(T);
        if (CellTypes.Of(type) is { } plain) return new Frame(Build("value" + CellTypes.Ending(type), plain, rows.Select(CellTypes.Plain)));
        var properties = type.GetProperties(Shown).Where(static property => property.CanRead && property.GetIndexParameters().Length == 0);
        var columns = properties.SelectMany(property => ColumnsOf(property, rows)).ToList();
        return columns.Count > 0 ? new Frame(columns) : throw new ArgumentException($"{type.Name} has no property that a column can hold.", nameof(records));
    }

    /// <summary>The rows as records: each parameter of the record's constructor is filled from the column of the same name, underscores and case aside.</summary>
    /// <typeparam name="T">A record such as <c>record Best(string Code, double TotalS)</c>.</typeparam>
    /// <exception cref="ArgumentException">A parameter has no column, a cell does not fit, or a cell is empty where the parameter cannot be.</exception>
    public IReadOnlyList<T> As<T>()
    {
        var constructor = typeof(T).GetConstructors().MaxBy(static one => one.GetParameters().Length)
            ?? throw new ArgumentException($"{typeof(T).Name} has no public constructor.");
        var parameters = constructor.GetParameters();
        FrameColumn[] columns = [.. parameters.Select(parameter => Columns.FirstOrDefault(column => Key(column.Name) == Key(parameter.Name!))
            ?? throw new ArgumentException($"{typeof(T).Name} asks for {parameter.Name}, but the columns are {string.Join(", ", Columns.Select(one => one.Name))}."))];
        return [.. Enumerable.Range(0, Count).Select(row => (T)constructor.Invoke([.. parameters.Select((parameter, at) => Fit(columns[at], row, parameter))]))];
    }

    private static IEnumerable<FrameColumn> ColumnsOf(PropertyInfo property, object?[] rows)
    {
        var name = Snake(property.Name);
        if (CellTypes.Of(property.PropertyType) is { } type)
            return [Build(name + CellTypes.Ending(property.PropertyType), type, rows.Select(row => CellTypes.Plain(row is null ? null : property.GetValue(row))))];
        if (property.PropertyType == typeof(Answer<Seconds>))
            return [Build(name + "_s", FrameType.Number, rows.Select(row => ((Answer<Seconds>?)property.GetValue(row!))?.Match<object?>(static time => time.Value, static _ => null)))];
        if (property.PropertyType != typeof(Estimate) && property.PropertyType != typeof(Answer<Estimate>)) return [];
        Estimate?[] estimates = [.. rows.Select(row => property.GetValue(row!) switch { Estimate estimate => estimate, Answer<Estimate> answer when answer.TryGet(out var estimate) => estimate, _ => null })];
        var units = estimates.OfType<Estimate>().Select(static estimate => estimate.Unit).Distinct().ToList();
        if (units.Count > 1) throw new ArgumentException($"The estimates of {property.Name} are in different units ({string.Join(", ", units)}): make one frame for each.", nameof(rows));
        var ending = units.Count == 1 ? ColumnUnit.Ending(units[0]) : "";
        return
        [
            Build(name + ending, FrameType.Number, estimates.Select(static estimate => (object?)estimate?.Value)),
            Build($"{name}_lower{ending}", FrameType.Number, estimates.Select(static estimate => (object?)estimate?.Lower)),
            Build($"{name}_upper{ending}", FrameType.Number, estimates.Select(static estimate => (object?)estimate?.Upper)),
        ];
    }

    private static object? Fit(FrameColumn column, int row, ParameterInfo parameter)
    {
        var wanted = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        var cell = column[row];
        if (cell is null)
        {
            return !parameter.ParameterType.IsValueType || wanted != parameter.ParameterType
                ? null
                : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Row {row + 1} of column {column.Name} is empty: make {parameter.Name} a {wanted.Name}?."));
        }

        try
        {
            return wanted.IsInstanceOfType(cell) ? cell
                : wanted == typeof(Seconds) ? new Seconds(Convert.ToDouble(cell, CultureInfo.InvariantCulture))
                : wanted == typeof(Percent) ? new Percent(Convert.ToDouble(cell, CultureInfo.InvariantCulture))
                : wanted == typeof(string) ? column.Texts[row]
                : Convert.ChangeType(cell, wanted, CultureInfo.InvariantCulture);
        }
        catch (Exception error) when (error is InvalidCastException or FormatException or OverflowException)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Row {row + 1} of column {column.Name} holds {cell}, which is no {wanted.Name}."), error);
        }
    }

    private static string Key(string name) => name.Replace("_", "", StringComparison.Ordinal).ToUpperInvariant();

    private static string Snake(string name) =>
        string.Concat(name.Select((letter, at) => char.IsUpper(letter) && at > 0 && (!char.IsUpper(name[at - 1]) || (at + 1 < name.Length && char.IsLower(name[at + 1]))) ? "_" + letter : letter.ToString())).ToLowerInvariant();
}
