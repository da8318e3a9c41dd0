using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>The marks.</summary>
internal sealed partial class Chart
{
    public void Line(Coordinates[] points, Color color, float width, float[]? dashes = null)
    {
        if (dashes is { Length: > 0 })
        {
            _plot.Add.Plottable(new DashedLine(points, color, width, dashes));
            return;
        }

        var line = _plot.Add.ScatterLine(points, color);
        line.LineWidth = width;
    }

    /// <summary>Marks on a ground of paper, so that lines do not run through them.</summary>
    public void Dots(Coordinates[] points, Color color, Dot dot, float size = 9)
    {
        if (points.Length == 0) return;
        var ground = _plot.Add.Markers(points, Shape(dot, open: false), size + 4, Ink.Paper);
        ground.MarkerStyle.LineWidth = 0;
        BareDots(points, color, dot, size);
    }

    /// <summary>Marks without a ground: half as much to draw where there are hundreds and no line lies under them.</summary>
    public void BareDots(Coordinates[] points, Color color, Dot dot, float size)
    {
        if (points.Length == 0) return;
        var marks = _plot.Add.Markers(points, Shape(dot, IsOpen(dot)), size, color);
        marks.MarkerStyle.FillColor = IsOpen(dot) ? Ink.Paper : color;
        marks.MarkerStyle.LineColor = color;
        marks.MarkerStyle.LineWidth = IsOpen(dot) ? 2 : 0;
    }

    public void Zone(double left, double right, double bottom, double top, Color color)
    {
        var zone = _plot.Add.Rectangle(left, right, bottom, top);
        zone.FillColor = color;
        zone.LineWidth = 0;
    }

    private static bool IsOpen(Dot dot) => dot is Dot.OpenCircle or Dot.OpenSquare;

    private static MarkerShape Shape(Dot dot, bool open) => dot switch
    {
        Dot.Circle => MarkerShape.FilledCircle,
        Dot.OpenCircle => open ? MarkerShape.OpenCircle : MarkerShape.FilledCircle,
        Dot.Square => MarkerShape.FilledSquare,
        Dot.OpenSquare => open ? MarkerShape.OpenSquare : MarkerShape.FilledSquare,
        Dot.Diamond => MarkerShape.FilledDiamond,
        Dot.Triangle => MarkerShape.FilledTriangleUp,
        _ => throw new ArgumentOutOfRangeException(nameof(dot), dot, "Not a mark of this library."),
    };
}
