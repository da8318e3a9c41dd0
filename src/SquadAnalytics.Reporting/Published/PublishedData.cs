using System.Globalization;
using System.Reflection;

namespace SquadAnalytics.Reporting.Published;

/// <summary>A small data set from the literature that comes with the library, and the numbers that were printed of it.</summary>
public sealed record PublishedData
{
    private readonly Dictionary<string, string[]> _columns;

    private PublishedData(string name, IReadOnlyList<string> columns, Dictionary<string, string[]> values, IReadOnlyList<PublishedNumber> printed)
    {
        (Name, Columns, _columns, Printed) = (name, columns, values, printed);
    }

    /// <summary>The data sets by name.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Resources.Where(name => name.EndsWith(".csv", StringComparison.Ordinal)).Select(name => name[Folder.Length..^4]).Order(StringComparer.Ordinal)];

    /// <summary>The name of the data set.</summary>
    public string Name { get; }

    /// <summary>Its columns by name, in order.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>The numbers that were printed of it.</summary>
    public IReadOnlyList<PublishedNumber> Printed { get; }

    private static string Folder => "published/";

    private static IEnumerable<string> Resources => Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal));

    /// <summary>Reads a data set.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    /// <exception cref="ArgumentException">There is no such data set.</exception>
    public static PublishedData Read(string name)
    {
        if (!Names.Contains(name, StringComparer.Ordinal)) throw new ArgumentException($"There is no published data set '{name}'. There are: {string.Join(", ", Names)}.", nameof(name));
        var rows = Lines(name + ".csv", ',');
        var columns = rows[0].Index().ToDictionary(column => column.Item, column => rows.Skip(1).Select(row => row[column.Index]).ToArray(), StringComparer.Ordinal);
        return new PublishedData(name, rows[0], columns,
            [.. Lines("numbers.tsv", '\t').Skip(1).Where(row => row[0] == name).Select(row => new PublishedNumber(row[0], row[1], row[2], int.Parse(row[3], CultureInfo.InvariantCulture), row[4]))]);
    }

    /// <summary>A column of numbers.</summary>
    /// <exception cref="ArgumentException">There is no such column, or it holds words.</exception>
    public IReadOnlyList<double> Numbers(string column) => [.. Words(column).Select(text => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        ? number
        : throw new ArgumentException($"Column '{column}' of '{Name}' holds '{text}', which is no number.", nameof(column)))];

    /// <summary>A column as it is written.</summary>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public IReadOnlyList<string> Words(string column) =>
        _columns.TryGetValue(column, out var values) ? values : throw new ArgumentException($"'{Name}' has no column '{column}', but: {string.Join(", ", Columns)}.", nameof(column));

    /// <summary>A long table laid out with one row for each subject and one number for each trial, both in the order in which they appear.</summary>
    /// <param name="subject">Column of the subject.</param>
    /// <param name="value">Column of the number.</param>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public IReadOnlyList<IReadOnlyList<double>> Table(string subject, string value) =>
        [.. Words(subject).Zip(Numbers(value)).GroupBy(pair => pair.First, StringComparer.Ordinal).Select(own => (IReadOnlyList<double>)[.. own.Select(pair => pair.Second)])];

    /// <summary>Holds a number against the printed one.</summary>
    /// <param name="quantity">What it is, as in <see cref="Printed"/>.</param>
    /// <param name="here">The number found here.</param>
    /// <exception cref="ArgumentException">Nothing of that name was printed, or the number is not finite.</exception>
    public PublishedCheck Check(string quantity, double here) => new(
        Printed.FirstOrDefault(number => number.Quantity == quantity) ?? throw new ArgumentException($"No '{quantity}' was printed of '{Name}', but: {string.Join("; ", Printed.Select(number => number.Quantity))}.", nameof(quantity)),
        double.IsFinite(here) ? here : throw new ArgumentOutOfRangeException(nameof(here), here, "The number must be finite."));

    /// <summary>Name and size.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}: {_columns[Columns[0]].Length} rows of {string.Join(", ", Columns)}");

    private static List<string[]> Lines(string file, char separator)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Folder + file)!;
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(separator))];
    }
}
