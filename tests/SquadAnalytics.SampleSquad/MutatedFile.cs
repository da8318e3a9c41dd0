using System.IO.Compression;
using System.Text;

namespace SquadAnalytics.SampleSquad;

/// <summary>A clipboard file with one to six damages, the same for the same seed.</summary>
public sealed class MutatedFile
{
    private static readonly string[] Tokens =
    [
        "\"", ";", ",", "\t", "|", "\n", "\r", "\r\n\r\n", "-", "–", "0", "1:72", "1:2", "62s4", "-62", "1:02:30", "1.02", "62,4", "1e308", "NaN", "∞", "DNF", "dns", "=1+1", "04/03/2031",
        "2031-02-30", "Set 1", "Name;Set 1;Set 2", "sep=,", "İ", "ß", "\u0000", "\uFEFF", "\uD800", "٦٢", "Bo\u200B", "99999999999999999999", "athlete,date,set,seconds", "protocol: ", "<x>", "]]>", " ", "\u00A0",
    ];

    private MutatedFile(int seed, string name, byte[] content)
    {
        Seed = seed;
        Name = name;
        Content = content;
    }

    /// <summary>The seed that it was made with.</summary>
    public int Seed { get; }

    /// <summary>Name of the file that was damaged.</summary>
    public string Name { get; }

    /// <summary>The damaged bytes.</summary>
    public byte[] Content { get; }

    /// <summary>Damages one of the sample files.</summary>
    public static MutatedFile Make(int seed)
    {
        var random = new Random(seed);
        var file = ClipboardFiles.All[random.Next(ClipboardFiles.All.Count)];
        var damages = random.Next(1, 7);
        var content = file.Content;
        for (var k = 0; k < damages; k++) content = file.Name.EndsWith(".xlsx", StringComparison.Ordinal) && random.Next(8) > 0 ? Part(content, random) : Bytes(content, random);
        return new MutatedFile(seed, file.Name, content);
    }

    /// <summary>Seed, name and size.</summary>
    public override string ToString() => FormattableString.Invariant($"seed {Seed}: {Name}, {Content.Length} bytes");

    private static byte[] Bytes(byte[] content, Random random)
    {
        if (content.Length == 0) return Encoding.UTF8.GetBytes(Tokens[random.Next(Tokens.Length)]);
        var at = random.Next(content.Length);
        var length = Math.Min(random.Next(1, 60), content.Length - at);
        switch (random.Next(7))
        {
            case 0:
                var flipped = (byte[])content.Clone();
                flipped[at] ^= (byte)(1 << random.Next(8));
                return flipped;
            case 1:
                return [.. content.AsSpan(0, at), .. content.AsSpan(at + length)];
            case 2:
                return [.. content.AsSpan(0, at + length), .. content.AsSpan(at)];
            case 3:
                return [.. content.AsSpan(0, at)];
            case 4:
                var lines = Encoding.UTF8.GetString(content).Split('\n');
                (lines[at % lines.Length], lines[length % lines.Length]) = (lines[length % lines.Length], lines[at % lines.Length]);
                return Encoding.UTF8.GetBytes(string.Join('\n', lines));
            default:
                return [.. content.AsSpan(0, at), .. Encoding.UTF8.GetBytes(Tokens[random.Next(Tokens.Length)]), .. content.AsSpan(at)];
        }
    }

    // Damages the text of one part within a package, so that the reader gets past the package itself.
    private static byte[] Part(byte[] package, Random random)
    {
        try
        {
            using var stream = new MemoryStream();
            stream.Write(package);
            using (var archive = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
            {
                if (archive.Entries.Count == 0) return Bytes(package, random);
                var entry = archive.Entries[random.Next(archive.Entries.Count)];
                byte[] content;
                using (var reading = entry.Open())
                {
                    using var copy = new MemoryStream();
                    reading.CopyTo(copy);
                    content = copy.ToArray();
                }

                var name = entry.FullName;
                entry.Delete();
                using var writing = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
                writing.Write(Bytes(content, random));
            }

            return stream.ToArray();
        }
        catch (Exception error) when (error is InvalidDataException or ArgumentOutOfRangeException or NotSupportedException)
        {
            // An earlier damage made the package itself unreadable.
            return Bytes(package, random);
        }
    }
}
