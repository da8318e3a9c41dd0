using SkiaSharp;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Reporting.Tests.Figures;

/// <summary>Read back by the drawing library's decoder, which knows nothing of how the file was written.</summary>
public sealed class PngFileTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(7, 3)]
    [InlineData(301, 211)]
    public void Every_pixel_is_read_back(int width, int height)
    {
        var random = new Random(5);
        using var drawn = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        drawn.Pixels = [.. Enumerable.Range(0, width * height).Select(_ => new SKColor((byte)random.Next(256), (byte)random.Next(256), (byte)random.Next(256)))];
        using var pixels = drawn.PeekPixels();
        using var read = SKBitmap.Decode(PngFile.Of(pixels, 300));
        Assert.Equal((width, height), (read.Width, read.Height));
        Assert.Equal(drawn.Pixels, read.Pixels);
    }

    [Fact]
    public void The_file_ends_as_every_such_file_does()
    {
        // The closing chunk with its checksum AE426082 is the same in every PNG file (the specification's example).
        Assert.Equal([0, 0, 0, 0, .. "IEND"u8, 0xAE, 0x42, 0x60, 0x82], Examples.Changed().ToPng()[^12..]);
    }

    [Fact]
    public void The_wide_picture_prints_at_300_dots_per_inch()
    {
        // 300 / 0.0254 = 11,811 dots per metre, in the chunk pHYs of the PNG specification.
        var file = Examples.Changed().ToPng();
        var density = file.AsSpan(file.AsSpan().IndexOf("pHYs"u8) + 4, 9);
        Assert.Equal([0, 0, 0x2E, 0x23, 0, 0, 0x2E, 0x23, 1], density.ToArray());
    }
}
