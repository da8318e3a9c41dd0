using System.Text;
using ScottPlot;
using SkiaSharp;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>One or more plots on a sheet, stacked from top to bottom.</summary>
internal sealed class Drawing
{
    private readonly IReadOnlyList<Panel> _panels;

    public Drawing(int width, params IReadOnlyList<Panel> panels)
    {
        Width = width;
        _panels = panels;
    }

    public int Width { get; }

    public int Height => _panels.Sum(panel => panel.Height);

    public byte[] ToPng(int dotsPerUnit)
    {
        using var surface = SKSurface.Create(new SKImageInfo(Width * dotsPerUnit, Height * dotsPerUnit));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(dotsPerUnit);
        RenderOn(surface.Canvas);
        using var image = surface.Snapshot();
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    public string ToSvg()
    {
        using var bytes = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, Height), bytes)) RenderOn(canvas);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private void RenderOn(SKCanvas canvas)
    {
        var top = 0;
        foreach (var panel in _panels)
        {
            panel.Plot.Render(canvas, new PixelRect(0, Width, top + panel.Height, top));
            top += panel.Height;
        }
    }
}
