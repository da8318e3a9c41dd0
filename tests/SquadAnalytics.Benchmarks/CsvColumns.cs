using System.Globalization;

namespace SquadAnalytics.Benchmarks;

/// <summary>The columns of a plain comma-separated file without quotes, as the peers write it.</summary>
internal sealed class CsvColumns
{
    private readonly string[] _names;
    private readonly string[][] _rows;

    private CsvColumns(string[] names, string[][] rows)
    {
        _names = names;
        _rows = rows;
    }

    public static CsvColumns Read(string path)
    {
        var lines = File.ReadAllLines(path);
        return new CsvColumns(lines[0].Split(','), [.. lines.Skip(1).Where(line => line.Length > 0).Select(line => line.Split(','))]);
    }

    public string[] Text(string name)
    {
        var column = Array.IndexOf(_names, name);
        return column >= 0 ? [.. _rows.Select(row => row[column])] : throw new ArgumentException($"There is no column '{name}'.", nameof(name));
    }

    public double[] Numbers(string name) => [.. Text(name).Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
}
