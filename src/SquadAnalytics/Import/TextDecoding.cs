using System.Text;
using System.Text.Unicode;
using UtfUnknown;

namespace SquadAnalytics.Import;

/// <summary>Bytes of a text file as UTF-8, whatever encoding they came in.</summary>
/// <param name="Utf8">The text as UTF-8 without a byte order mark.</param>
/// <param name="Encoding">Name of the encoding that was found.</param>
/// <param name="IsGuess">Whether the encoding follows from letter statistics only, not from a mark or from the bytes' own structure.</param>
internal sealed record TextDecoding(ReadOnlyMemory<byte> Utf8, string Encoding, bool IsGuess)
{
    private const string Western = "windows-1252";

    // Western names are too short for letter statistics: where the commonest western code page is possible, another one needs this much confidence.
    private const float StrongConfidence = 0.7f;

    /// <summary>Decodes the bytes.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="knownNames">Names that are expected in it: where the letters leave a choice of code pages, they decide.</param>
    public static TextDecoding Of(byte[] bytes, IReadOnlyList<string> knownNames)
    {
        if (Marked(bytes) is { } marked) return marked;
        if (Utf16WithoutMark(bytes) is { } wide) return new TextDecoding(ToUtf8(wide, bytes), wide.WebName, true);
        if (System.Text.Unicode.Utf8.IsValid(bytes)) return new TextDecoding(bytes, "utf-8", false);
        var encoding = Detected(bytes, knownNames);
        return new TextDecoding(ToUtf8(encoding, bytes), encoding.WebName, true);
    }

    private static TextDecoding? Marked(byte[] bytes)
    {
        // The UTF-32 mark begins with the UTF-16 one.
        foreach (var encoding in new System.Text.Encoding[] { new UTF32Encoding(false, true), new UTF32Encoding(true, true), new UTF8Encoding(true), new UnicodeEncoding(false, true), new UnicodeEncoding(true, true) })
        {
            var mark = encoding.Preamble;
            if (!bytes.AsSpan().StartsWith(mark)) continue;
            var content = bytes.AsMemory(mark.Length);
            var isValidUtf8 = encoding is UTF8Encoding && System.Text.Unicode.Utf8.IsValid(content.Span);
            return new TextDecoding(isValidUtf8 ? content : ToUtf8(encoding, content.ToArray()), encoding.WebName, false);
        }

        return null;
    }

    // Western text in UTF-16 has a zero in every second byte; no 8-bit text file contains zeros.
    private static UnicodeEncoding? Utf16WithoutMark(byte[] bytes)
    {
        var pairs = Math.Min(bytes.Length, 4096) / 2;
        if (pairs < 2) return null;
        int even = 0, odd = 0;
        for (var k = 0; k < pairs; k++)
        {
            if (bytes[2 * k] == 0) even++;
            if (bytes[(2 * k) + 1] == 0) odd++;
        }

        if (odd * 10 > pairs * 3 && even * 20 < pairs) return new UnicodeEncoding(false, false);
        return even * 10 > pairs * 3 && odd * 20 < pairs ? new UnicodeEncoding(true, false) : null;
    }

    private static System.Text.Encoding Detected(byte[] bytes, IReadOnlyList<string> knownNames)
    {
        var western = Named(Western)!;
        var found = (CharsetDetector.DetectFromBytes(bytes).Details ?? [])
            .Select(detail => (Encoding: Named(detail.EncodingName ?? ""), detail.Confidence))
            .Where(candidate => candidate.Encoding is not null)
            .Select(candidate => (Encoding: candidate.Encoding!, candidate.Confidence))
            .ToList();
        var special = knownNames.Where(name => !System.Text.Ascii.IsValid(name)).ToList();
        var matching = found.Select(candidate => candidate.Encoding).Append(western).Distinct()
            .Select(encoding => (Encoding: encoding, Names: special.Count(name => encoding.GetBytes(name) is var written && encoding.GetString(written) == name && bytes.AsSpan().IndexOf(written) >= 0)))
            .MaxBy(candidate => candidate.Names);
        if (matching.Names > 0) return matching.Encoding;
        if (found.Count == 0) return western;
        var (best, confidence) = found.MaxBy(candidate => candidate.Confidence);
        return confidence >= StrongConfidence || !found.Exists(candidate => candidate.Encoding.CodePage == western.CodePage) ? best : western;
    }

    // The provider is asked directly instead of being registered for the whole process.
    private static System.Text.Encoding? Named(string name)
    {
        try
        {
            return CodePagesEncodingProvider.Instance.GetEncoding(name) ?? System.Text.Encoding.GetEncoding(name);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static byte[] ToUtf8(System.Text.Encoding encoding, byte[] bytes) => System.Text.Encoding.Convert(encoding, System.Text.Encoding.UTF8, bytes);
}
