using System.Text;
using SkiaSharp;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>One or more charts on a sheet, stacked from top to bottom.</summary>
internal sealed class Drawing : IDisposable
{
    /// <summary>A unit prints as a hundredth of an inch: a wide sheet fits between the margins of A4.</summary>
    private const int UnitsPerInch = 100;

    private readonly IReadOnlyList<Chart> _charts;

    public Drawing(params IReadOnlyList<Chart> charts)
    {
        _charts = charts;
        Width = charts.Max(chart => chart.Width);
    }

    public int Width { get; }

    public int Height => _charts.Sum(chart => chart.Height);

    public byte[] ToPng(int dotsPerUnit)
    {
        using var surface = SKSurface.Create(new SKImageInfo(Width * dotsPerUnit, Height * dotsPerUnit, SKColorType.Rgba8888));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(dotsPerUnit);
        foreach (var text in RenderOn(surface.Canvas)) text.RenderOn(surface.Canvas);
        using var pixels = surface.PeekPixels();
        return PngFile.Of(pixels, dotsPerUnit * UnitsPerInch);
    }

    /// <summary>The marks as SVG, and the texts to be written over them.</summary>
    public VectorSheet ToVector()
    {
        using var bytes = new MemoryStream();
        List<PlacedText> texts;
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, Height), bytes)) texts = RenderOn(canvas);
        return new VectorSheet(Encoding.UTF8.GetString(bytes.ToArray()), texts);
    }

    public void Dispose()
    {
        foreach (var chart in _charts) chart.Dispose();
    }

    private List<PlacedText> RenderOn(SKCanvas canvas)
    {
        var texts = new List<PlacedText>();
        var top = 0;
        foreach (var chart in _charts)
        {
            texts.AddRange(chart.RenderOn(canvas, top));
            top += chart.Height;
        }

        return texts;
    }
}
