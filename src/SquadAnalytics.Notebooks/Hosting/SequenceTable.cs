using System.Collections;
using System.Globalization;
using SquadAnalytics.Frames;
using SquadAnalytics.Reporting;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>A sequence of the library's values as a table: records of a computation by their columns, people and their records each as they describe themselves.</summary>
internal static class SequenceTable
{
    public static Table Of(IEnumerable values)
    {
        List<object> items = [.. values.Cast<object?>().OfType<object>()];
        var caption = string.Create(CultureInfo.InvariantCulture, $"{items.Count} {(items.Count == 1 ? "value" : "values")}");
        if (items.Count == 0) return new Table(caption, [new("value")], []);
        return Tables.Of(ColumnsOf(items) ?? new Frame(FrameColumn.OfTexts("value", items.Select(static item => item.ToString()))), caption);
    }

    /// <summary>The items by columns; null for those whose columns would be names and notes of people, or that have none.</summary>
    private static Frame? ColumnsOf(List<object> items)
    {
        var type = items[0].GetType();
        if (type.Namespace is "SquadAnalytics" or "SquadAnalytics.Storage" or "SquadAnalytics.Import" || items.Exists(item => item.GetType() != type)) return null;
        try
        {
            return Frame.Of(items);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
