using System.Xml.Linq;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>How wide the columns of a table are: as wide as their words need, together no wider than the page.</summary>
internal static class WordColumns
{
    /// <summary>Width between the margins, in twentieths of a point.</summary>
    private const int Page = 9354;

    // An average letter at the table's size, and the space beside the words of a cell.
    private const int Letter = 136;

    // A figure or letter at its narrowest, for what is not to break.
    private const int Tight = 112;
    private const int Gap = 240;
    private const int LongestLine = 34;

    /// <summary>The width of each column, in twentieths of a point.</summary>
    /// <param name="rows">The rows, headings included.</param>
    public static IReadOnlyList<int> Widths(IReadOnlyList<XElement> rows)
    {
        var columns = rows.Max(static row => row.Elements().Count());
        var cells = rows.SelectMany(static row => row.Elements().Select(static (cell, k) => (k, Text: cell.Value))).ToLookup(static cell => cell.k, static cell => cell.Text);
        int Needed(int k, int letter, Func<string, int> length) => (cells[k].Select(length).DefaultIfEmpty(0).Max() * letter) + Gap;
        var least = Enumerable.Range(0, columns).Select(k => Needed(k, Tight, static text => text.Split(' ').Max(static word => word.Length))).ToList();
        var wished = Enumerable.Range(0, columns).Select(k => Math.Max(least[k], Needed(k, Letter, static text => Math.Min(text.Length, LongestLine)))).ToList();
        if (wished.Sum() <= Page) return wished;
        var (spare, wish) = (Page - least.Sum(), wished.Sum() - least.Sum());
        return spare > 0 && wish > 0
            ? [.. least.Zip(wished, (low, high) => low + (int)((long)(high - low) * spare / wish))]
            : [.. least.Select(low => (int)((long)low * Page / least.Sum()))];
    }
}
