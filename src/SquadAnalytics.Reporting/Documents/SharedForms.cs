using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SquadAnalytics.Standing;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>
/// What a table, a finding or a piece of HTML becomes when it leaves the club: names that must not be shown become codes, health entries and
/// aggregates over fewer than five athletes are withheld, together with what would give them away by subtraction.
/// </summary>
/// <remarks>Source of the threshold: see <see cref="SmallGroups"/>.</remarks>
public static partial class SharedForms
{
    /// <summary>What stands where the figure of a small group was.</summary>
    public const string SmallGroup = "withheld: small group";

    private const string SvgNamespace = "http://www.w3.org/2000/svg";

    /// <summary>A table as it may be shared.</summary>
    /// <param name="table">The table.</param>
    /// <param name="discretion">What must not leave.</param>
    /// <param name="threshold">Aggregates of fewer athletes are withheld; 2 or more.</param>
    /// <returns>The table, or null where nothing of it may be shared.</returns>
    public static Table? Of(Table table, Discretion discretion, int threshold = SmallGroups.DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(discretion);
        var columns = Enumerable.Range(0, table.Columns.Count).Where(k => !Discretion.IsHealthHeading(table.Columns[k].Header)).ToList();
        if (columns.Count == 0) return null;
        var small = SmallCells(table, threshold);
        var rows = new List<IReadOnlyList<TableCell>>();
        for (var row = 0; row < table.Rows.Count; row++)
        {
            if (Discretion.IsHealthHeading(table.Rows[row][0].Text)) continue;
            rows.Add([.. columns.Select(k => small[row, k] || (table.OverAthletes < threshold && k > 0) ? TableCell.Restored(SmallGroup, null, true, null) : Cell(table.Rows[row][k], discretion))]);
        }

        return new Table(discretion.Apply(table.Caption), [.. columns.Select(k => Column(table.Columns[k], discretion))], rows) { Notes = table.OverAthletes < threshold ? [] : [.. table.Notes.Select(discretion.Apply)] };
    }

    /// <summary>A finding as it may be shared.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="discretion">What must not leave.</param>
    /// <param name="threshold">An aggregate of fewer athletes is withheld; 2 or more.</param>
    public static Finding Of(Finding finding, Discretion discretion, int threshold = SmallGroups.DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(discretion);
        if (finding.OverAthletes < threshold) return new Finding($"A finding over fewer than {threshold.ToString(CultureInfo.InvariantCulture)} athletes is withheld here.");
        return new Finding(discretion.Apply(finding.Sentence)) { Estimate = finding.Estimate, Method = finding.Method, Source = finding.Source, OverAthletes = finding.OverAthletes, Notes = [.. finding.Notes.Select(discretion.Apply)] };
    }

    /// <summary>A fragment of HTML or SVG as it may be shared; it goes through the allow-list on the way.</summary>
    /// <param name="html">The fragment.</param>
    /// <param name="discretion">What must not leave.</param>
    /// <returns>The fragment, or null where it still says what it must not after every text was seen to.</returns>
    public static string? OfHtml(string html, Discretion discretion)
    {
        ArgumentNullException.ThrowIfNull(discretion);
        var safe = FragmentSanitizer.Sanitize(html);
        var root = XElement.Parse($"<root>{safe}</root>", LoadOptions.PreserveWhitespace);
        if (!Texts(root).Any(discretion.Concerns) && !root.Descendants("th").Any(cell => Discretion.IsHealthHeading(cell.Value))) return safe;
        foreach (var table in root.Descendants("table").ToList()) LeaveOutHealth(table);
        foreach (var text in root.DescendantNodes().OfType<XText>().ToList()) text.Value = discretion.Apply(text.Value);
        foreach (var attribute in root.Descendants().Attributes().Where(IsWords).ToList()) attribute.Value = discretion.Apply(attribute.Value);
        return Texts(root).Any(discretion.NamesOrQuotes) ? null : FragmentSanitizer.Sanitize(string.Concat(root.Nodes().Select(node => node.ToString(SaveOptions.DisableFormatting))));
    }

    /// <summary>Whether a drawing that stands alone in its file shows aggregates over too few athletes.</summary>
    /// <param name="svg">The drawing, as a figure wrote it.</param>
    /// <param name="threshold">Aggregates of fewer athletes are withheld; 2 or more.</param>
    public static bool IsSmallGroup(string svg, int threshold = SmallGroups.DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(svg);
        return AthletesOfDrawing().Match(svg) is { Success: true } written && (!int.TryParse(written.Groups[1].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out var athletes) || athletes < threshold);
    }

    /// <summary>A drawing that stands alone in its file, as it may be shared.</summary>
    /// <param name="svg">The drawing.</param>
    /// <param name="discretion">What must not leave.</param>
    public static string? OfSvg(string svg, Discretion discretion) => OfHtml(svg, discretion) is { } drawing ? $"<?xml version=\"1.0\" encoding=\"utf-8\"?>\n{drawing}" : null;

    /// <summary>The words of a fragment of HTML or SVG, alternative texts included, a line each.</summary>
    /// <param name="html">The fragment.</param>
    public static string Words(string html) => WordsOf(XElement.Parse($"<root>{FragmentSanitizer.Sanitize(html)}</root>"));

    internal static string WordsOf(XElement root) => string.Join('\n', Texts(root));

    /// <summary>All texts of a fragment: each by itself, and all of them together with and without a gap where markup stood.</summary>
    private static IEnumerable<string> Texts(XElement root) =>
    [
        .. root.DescendantNodes().OfType<XText>().Select(static text => text.Value),
        .. root.Descendants().Attributes().Where(IsWords).Select(static attribute => attribute.Value),
        .. root.Descendants().Where(static element => element.Name.NamespaceName != SvgNamespace && element.Elements().Any()).Select(static element => string.Join(' ', element.Nodes().OfType<XText>().Select(static text => text.Value))),
        string.Join(' ', root.DescendantNodes().OfType<XText>().Select(static text => text.Value)),
        root.Value,
    ];

    private static bool IsWords(XAttribute attribute) => attribute.Name.LocalName is "aria-label" or "aria-description" or "alt" or "title";

    private static void LeaveOutHealth(XElement table)
    {
        var rows = table.Descendants("tr").ToList();
        var hidden = rows.Take(1).SelectMany(static row => row.Elements().Select((cell, k) => (Heading: cell.Value, k))).Where(static cell => Discretion.IsHealthHeading(cell.Heading)).Select(static cell => cell.k).ToHashSet();
        foreach (var row in rows)
        {
            if (row.Elements().FirstOrDefault() is { } first && Discretion.IsHealthHeading(first.Value) && row != rows[0]) row.Remove();
            else row.Elements().Where((_, k) => hidden.Contains(k)).ToList().ForEach(static cell => cell.Remove());
        }
    }

    private static TableCell Cell(TableCell cell, Discretion discretion) =>
        cell.Number is not null || ReferenceEquals(cell, TableCell.Nothing) ? cell : TableCell.Restored(discretion.Apply(cell.Text), null, cell.IsRefusal, cell.Athletes);

    private static TableColumn Column(TableColumn column, Discretion discretion) => new(discretion.Apply(column.Header), column.Unit, column.Alignment);

    /// <summary>Which cells belong to groups that are too small; the squad as a whole counts as known, and a cell that is the sum of the others is the whole.</summary>
    private static bool[,] SmallCells(Table table, int threshold)
    {
        var small = new bool[table.Rows.Count, table.Columns.Count];
        for (var column = 0; column < table.Columns.Count; column++)
        {
            var groups = Enumerable.Range(0, table.Rows.Count).Where(row => table.Rows[row][column].Athletes is not null).ToList();
            int Athletes(int row) => table.Rows[row][column].Athletes!.Value;
            var whole = groups.Where(row => groups.Count > 2 && 2 * Athletes(row) == groups.Sum(Athletes)).Take(1).ToList();
            foreach (var part in (IReadOnlyList<int>[])[whole, [.. groups.Except(whole)]])
            {
                var withheld = SmallGroups.Withheld([.. part.Select(Athletes)], wholeIsShared: true, threshold);
                for (var k = 0; k < part.Count; k++) small[part[k], column] = withheld[k];
            }
        }

        return small;
    }

    [GeneratedRegex("^(?:<\\?[^>]*\\?>)?\\s*<svg[^>]* data-athletes=\"([^\"]*)\"", RegexOptions.CultureInvariant)]
    private static partial Regex AthletesOfDrawing();
}
