using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Names of lines: beside their ends where there is room, in a row above the plot where there is not.</summary>
internal sealed partial class Chart
{
    private const float LineHeight = 17;

    /// <summary>Names beside the ends of their lines, moved apart where they would overlap.</summary>
    public void NameAtEnd(IReadOnlyList<LineName> names, double x) => NameBeside(names, x, TextEdge.Left, 6);

    /// <summary>Names before the beginnings of their lines, moved apart where they would overlap.</summary>
    public void NameAtStart(IReadOnlyList<LineName> names, double x) => NameBeside(names, x, TextEdge.Right, -6);

    private void NameBeside(IReadOnlyList<LineName> names, double x, TextEdge edge, float right)
    {
        var limits = _plot.Axes.GetLimits();
        var perUnit = (limits.Top - limits.Bottom) / (Height - _margins.Top - _margins.Bottom);
        var apart = LineHeight * perUnit;
        var sorted = names.OrderByDescending(name => name.EndsAt).ToList();
        var places = sorted.Select(name => name.EndsAt).ToArray();
        for (var pass = 0; pass < 50; pass++)
        {
            for (var k = 1; k < places.Length; k++)
            {
                var overlap = apart - (places[k - 1] - places[k]);
                if (overlap <= 0) continue;
                places[k - 1] += overlap / 2;
                places[k] -= overlap / 2;
            }

            // Names stay beside the plot: the outermost are held at its edges and push the others inwards.
            if (places.Length == 0 || places.Length * apart > limits.Top - limits.Bottom) continue;
            places[0] = Math.Min(places[0], limits.Top);
            places[^1] = Math.Max(places[^1], limits.Bottom);
        }

        for (var k = 0; k < sorted.Count; k++) Label(sorted[k].Text, x, places[k], Ink.Words(sorted[k].Color), edge, right: right, bold: sorted[k].Bold);
    }

    /// <summary>Names in rows above the plot, each behind its mark or a piece of its line.</summary>
    public void NameAbove(IReadOnlyList<LineName> names)
    {
        foreach (var (name, x, row) in Laid(names, Width)) OnSheet(Fit(Sign(name), Width - 2, bold: name.Bold), x, 36 + (row * LineHeight), Ink.Words(name.Color), bold: name.Bold);
    }

    /// <summary>Room above the plot that the heading and rows of names take.</summary>
    public static float RoomAbove(IReadOnlyList<LineName> names, FigureSize size) =>
        names.Count == 0 ? 30 : 48 + (LineHeight * Laid(names, WidthOf(size)).Max(static place => place.Row));

    private static IEnumerable<(LineName Name, float X, int Row)> Laid(IReadOnlyList<LineName> names, float width)
    {
        var (x, row) = (0f, 0);
        foreach (var name in names)
        {
            var takes = Measure(Sign(name), bold: name.Bold);
            if (x > 0 && x + takes > width - 2) (x, row) = (0, row + 1);
            yield return (name, x, row);
            x += takes + 14;
        }
    }

    private static string Sign(LineName name) => name.Dot switch
    {
        null => $"{(name.Dashed ? "– –" : "—")} {name.Text}",
        Dot.OpenCircle => $"○ {name.Text}",
        Dot.Square => $"■ {name.Text}",
        Dot.OpenSquare => $"□ {name.Text}",
        Dot.Diamond => $"◆ {name.Text}",
        Dot.Triangle => $"▲ {name.Text}",
        _ => $"● {name.Text}",
    };
}
