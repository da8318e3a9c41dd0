using ScottPlot;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>The dots of one group of rows, in the order of the column across.</summary>
internal sealed record FrameGroup(string Name, IReadOnlyList<Coordinates> Points)
{
    /// <summary>Whether each place has one dot at most.</summary>
    public bool IsLine => Points.Count > 1 && Points.Zip(Points.Skip(1)).All(static pair => pair.First.X < pair.Second.X);

    /// <summary>Whether a column holds words rather than places on a scale.</summary>
    public static bool HasWords(FrameColumn column) => column.Type is FrameType.Text or FrameType.Flag;

    /// <summary>The groups in the order in which they stand in the table; rows without one of the two values are left out.</summary>
    public static IReadOnlyList<FrameGroup> Of(FrameColumn x, FrameColumn y, FrameColumn? by)
    {
        var places = Places(x);
        var values = y.Numbers;
        var names = by?.Texts;
        return
        [
            .. Enumerable.Range(0, y.Count)
                .Where(row => places[row] is not null && values[row] is not null)
                .GroupBy(row => names is null ? "" : names[row] ?? "–", row => new Coordinates(places[row]!.Value, values[row]!.Value), StringComparer.Ordinal)
                .Select(static group => new FrameGroup(group.Key, [.. group.OrderBy(static point => point.X)])),
        ];
    }

    private static IReadOnlyList<double?> Places(FrameColumn x)
    {
        if (x.IsNumeric) return x.Numbers;
        if (!HasWords(x)) return [.. x.Dates.Select(static date => date is { } day ? DateScale.Position(day) : (double?)null)];
        var words = x.Texts.OfType<string>().Distinct(StringComparer.Ordinal).Index().ToDictionary(static pair => pair.Item, static pair => (double)pair.Index, StringComparer.Ordinal);
        return [.. x.Texts.Select(word => word is null ? (double?)null : words[word])];
    }
}
