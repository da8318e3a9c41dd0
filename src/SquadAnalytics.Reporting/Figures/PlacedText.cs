using ScottPlot;
using SkiaSharp;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>A text where it stands on the sheet: its edge and baseline in units.</summary>
internal sealed record PlacedText(string Text, float X, float Y, float Size, Color Color, TextEdge Edge, bool Bold)
{
    public void RenderOn(SKCanvas canvas)
    {
        using var paint = new SKPaint();
        paint.Color = Color.ToSKColor();
        paint.IsAntialias = true;
        using var font = new SKFont(BundledFont.TypefaceFor(Text, Bold), Size);
        font.Subpixel = true;
        var align = Edge switch
        {
            TextEdge.Left => SKTextAlign.Left,
            TextEdge.Middle => SKTextAlign.Center,
            _ => SKTextAlign.Right,
        };
        canvas.DrawText(Text, X, Y, align, font, paint);
    }
}
