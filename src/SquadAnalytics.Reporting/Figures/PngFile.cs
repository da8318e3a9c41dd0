using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using System.Text;
using SkiaSharp;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// Opaque pixels as a PNG file (W3C, third edition). The drawing library's own encoder takes several times as long, and most
/// of the time of a report was spent in it; it also does not write how large the picture prints.
/// </summary>
internal static class PngFile
{
    private const double MetresPerInch = 0.0254;

    /// <summary>A third of the time of the usual effort for files an eighth larger.</summary>
    private static readonly ZLibCompressionOptions Effort = new() { CompressionLevel = 2 };

    private static readonly byte[] Signature = [0x89, .. "PNG\r\n"u8, 0x1A, (byte)'\n'];

    /// <summary>The file.</summary>
    /// <param name="pixels">Red, green, blue and an alpha that is left out, a byte each.</param>
    /// <param name="dotsPerInch">How large it prints.</param>
    public static byte[] Of(SKPixmap pixels, int dotsPerInch)
    {
        var file = new MemoryStream();
        file.Write(Signature);
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, pixels.Width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), pixels.Height);
        header[8] = 8; // bits per colour
        header[9] = 2; // red, green, blue
        Chunk(file, "IHDR", header);
        var density = new byte[9];
        var dotsPerMetre = (int)Math.Round(dotsPerInch / MetresPerInch);
        BinaryPrimitives.WriteInt32BigEndian(density, dotsPerMetre);
        BinaryPrimitives.WriteInt32BigEndian(density.AsSpan(4), dotsPerMetre);
        density[8] = 1; // per metre
        Chunk(file, "pHYs", density);
        Chunk(file, "IDAT", Compressed(pixels));
        Chunk(file, "IEND", []);
        return file.ToArray();
    }

    private static byte[] Compressed(SKPixmap pixels)
    {
        using var bytes = new MemoryStream();
        using (var compressor = new ZLibStream(bytes, Effort))
        {
            var all = pixels.GetPixelSpan<byte>();

            // Each row begins with its filter: none, which suits flat areas of colour. Four bytes are moved at once, the alpha is overwritten by the next dot.
            var row = new byte[1 + 3 * pixels.Width + 1];
            for (var y = 0; y < pixels.Height; y++)
            {
                var dots = MemoryMarshal.Cast<byte, uint>(all.Slice(y * pixels.RowBytes, 4 * pixels.Width));
                for (var x = 0; x < dots.Length; x++) MemoryMarshal.Write(row.AsSpan(1 + 3 * x), dots[x]);
                compressor.Write(row.AsSpan(..^1));
            }
        }

        return bytes.ToArray();
    }

    private static void Chunk(MemoryStream file, string type, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        file.Write(number);
        byte[] named = [.. Encoding.ASCII.GetBytes(type), .. content];
        file.Write(named);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc32.HashToUInt32(named));
        file.Write(number);
    }
}
