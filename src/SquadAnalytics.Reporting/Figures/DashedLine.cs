using ScottPlot;
using SkiaSharp;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// A dashed line with a paint of its own. The drawing library's paint keeps the dashes for the marks that follow, which in SVG cannot have
/// any, and complains about each of them on the error stream.
/// </summary>
internal sealed class DashedLine(Coordinates[] points, Color color, float width, float[] dashes) : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => new(points);

    public void Render(RenderPack rp)
    {
        using var effect = SKPathEffect.CreateDash(dashes, 0);
        using var paint = new SKPaint();
        paint.Color = color.ToSKColor();
        paint.IsAntialias = true;
        paint.Style = SKPaintStyle.Stroke;
        paint.StrokeWidth = width;
        paint.PathEffect = effect;
        using var path = new SKPath();
        for (var k = 0; k < points.Length; k++)
        {
            var place = Axes.GetPixel(points[k]);
            if (k == 0) path.MoveTo(place.X, place.Y);
            else path.LineTo(place.X, place.Y);
        }

        rp.Canvas.DrawPath(path, paint);
    }
}
