using System.Security.Cryptography;
using System.Text;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>SHA-256 of files, as lower-case hexadecimal text.</summary>
internal static class Fingerprints
{
    public static string Of(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));

    public static string OfFile(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }

    /// <summary>One SHA-256 over several files: that of the lines that <c>sha256sum</c> prints for them, ordered by name.</summary>
    public static string Together(IEnumerable<KeyValuePair<string, string>> hashes)
    {
        var lines = new StringBuilder();
        foreach (var (file, hash) in hashes.OrderBy(pair => pair.Key, StringComparer.Ordinal)) lines.Append(hash).Append("  ").Append(file).Append('\n');
        return Of(Encoding.UTF8.GetBytes(lines.ToString()));
    }
}
