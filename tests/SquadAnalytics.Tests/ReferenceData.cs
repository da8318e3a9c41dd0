using System.Globalization;
using System.Text.Json;

namespace SquadAnalytics.Tests;

/// <summary>
/// The reference pack under tests/Reference: expected values from certified data sets, papers and general-purpose statistics
/// software, never from this project. Each JSON names its source, the exact call and the tolerance beside the values.
/// </summary>
internal static class ReferenceData
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Reference");

    /// <summary>The parsed JSON of an item, for example <c>Load("reliability", "weir_a")</c>.</summary>
    public static ReferenceValue Load(string folder, string item)
    {
        using var stream = File.OpenRead(Path.Combine(Folder, folder, item + ".json"));
        return new ReferenceValue(JsonDocument.Parse(stream).RootElement.Clone(), $"{folder}/{item}");
    }

    /// <summary>One block of an item's results.</summary>
    public static ReferenceValue Results(string folder, string item, string block) => Load(folder, item).GetProperty("results").GetProperty(block);

    /// <summary>The values of one block of an item's results.</summary>
    public static ReferenceValue Values(string folder, string item, string block) => Results(folder, item, block).GetProperty("values");

    /// <summary>The data of an item, column by column, as text.</summary>
    public static IReadOnlyDictionary<string, string[]> Text(string folder, string file)
    {
        var lines = File.ReadAllLines(Path.Combine(Folder, folder, file)).Where(line => line.Length > 0).ToArray();
        var names = lines[0].Split(',');
        var rows = lines.Skip(1).Select(line => line.Split(',')).ToArray();
        return names.Select((name, column) => (name, values: rows.Select(row => row[column]).ToArray())).ToDictionary(pair => pair.name, pair => pair.values);
    }

    /// <summary>One numeric column of an item's data.</summary>
    public static double[] Column(string folder, string file, string column) =>
        Text(folder, file)[column].Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray();

    /// <summary>Asserts that a number lies within the stated relative tolerance (absolute where the expectation is 0), or the alternative absolute one.</summary>
    public static void AssertClose(double expected, double got, double relative, double absolute = 0, string? what = null)
    {
        var bound = Math.Max(absolute, expected == 0 ? relative : relative * Math.Abs(expected));
        Assert.True(Math.Abs(got - expected) <= bound, string.Create(CultureInfo.InvariantCulture, $"{what ?? "value"}: expected {expected:R}, got {got:R}, allowed ±{bound:R}"));
    }
}
