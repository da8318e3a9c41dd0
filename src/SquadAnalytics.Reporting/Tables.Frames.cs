using System.Globalization;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Reporting;

/// <content>Frames: what a query returned, or what results became.</content>
public static partial class Tables
{
    /// <summary>Rows of a frame that are shown unless told otherwise.</summary>
    public const int RowsShown = 60;

    private const int MostDecimals = 2;
    private const int MostDecimalsBelowOne = 4;

    /// <summary>A frame as a table: columns by their names, figures right-aligned with as many decimals as they have, up to two.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="caption">What it shows; null for the frame's title.</param>
    /// <param name="rows">Rows shown at most; a note tells how many there are.</param>
    public static Table Of(Frame frame, string? caption = null, int rows = RowsShown)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var shown = frame.First(rows);
        var count = string.Create(CultureInfo.InvariantCulture, $"{frame.Count} {(frame.Count == 1 ? "row" : "rows")}");
        if (frame.Columns.Count == 0) return new Table(caption ?? frame.Title ?? "Nothing", [new("no columns")], []);
        var cells = shown.Columns.Select(Cells).ToList();
        return new Table(
            caption ?? frame.Title ?? count,
            [.. shown.Columns.Select(static column => column.IsNumeric ? TableColumn.Figures(column.Name) : new TableColumn(column.Name))],
            [.. Enumerable.Range(0, shown.Count).Select(row => (IReadOnlyList<TableCell>)[.. cells.Select(column => column[row])])])
        {
            Notes = frame.Count == 0 ? ["No row fits."] : frame.Count > shown.Count ? [string.Create(CultureInfo.InvariantCulture, $"The first {shown.Count} of {frame.Count} rows.")] : [],
        };
    }

    private static IReadOnlyList<TableCell> Cells(FrameColumn column)
    {
        if (!column.IsNumeric) return [.. column.Texts.Select(static text => text is null ? TableCell.Nothing : TableCell.Words(text))];
        var numbers = column.Numbers;
        var decimals = column.Type == FrameType.WholeNumber ? 0 : DecimalsOf([.. numbers.OfType<double>()]);
        return [.. numbers.Select(number => number is { } known ? TableCell.Figure(known, decimals) : TableCell.Nothing)];
    }

    /// <summary>Decimals that show every number exactly, but no more than a reader can use.</summary>
    internal static int DecimalsOf(IReadOnlyList<double> numbers)
    {
        var most = numbers.Count > 0 && numbers.Max(Math.Abs) < 1 ? MostDecimalsBelowOne : MostDecimals;
        for (var decimals = 0; decimals < most; decimals++)
        {
            if (numbers.All(number => Math.Abs(number - Math.Round(number, decimals)) <= 1e-9 * Math.Max(1, Math.Abs(number)))) return decimals;
        }

        return most;
    }
}
