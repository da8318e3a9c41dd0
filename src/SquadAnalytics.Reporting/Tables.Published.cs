using SquadAnalytics.Reporting.Published;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>Numbers found here beside the printed ones.</summary>
    /// <param name="caption">What the table shows.</param>
    /// <param name="checks">The comparisons; at least one.</param>
    /// <exception cref="ArgumentException">There is no comparison.</exception>
    public static Table AgainstPublished(string caption, params IReadOnlyList<PublishedCheck> checks)
    {
        ArgumentNullException.ThrowIfNull(checks);
        if (checks.Count == 0) throw new ArgumentException("There is nothing to compare.", nameof(checks));
        return new Table(
            caption,
            [new("data"), new("quantity"), TableColumn.Figures("here"), TableColumn.Figures("published"), new("both"), new("source")],
            [.. checks.Select(check => (IReadOnlyList<TableCell>)
            [
                TableCell.Words(check.Published.Data), TableCell.Words(check.Published.Quantity), TableCell.Shown(check.Shown, check.Here), TableCell.Words(check.Published.Text.Replace('-', '\u2212')),
                TableCell.Words(check.Agrees ? "agree" : "differ"), TableCell.Words(check.Published.Source),
            ])])
        {
            Notes =
            [
                .. checks.Select(check => check.Published).Where(printed => printed.Digits < Digits(printed.Text)).GroupBy(printed => (printed.Data, printed.Digits))
                    .Select(group => $"{group.Key.Data}, {string.Join(", ", group.Select(printed => printed.Quantity))}: {group.Key.Digits} digits are asked for."),
            ],
        };
    }

    private static int Digits(string number) => number.TrimStart('-', '0', '.').Replace(".", "", StringComparison.Ordinal).Length;
}
