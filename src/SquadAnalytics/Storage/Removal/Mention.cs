using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using System.Text.Unicode;
using SquadAnalytics.Import;

namespace SquadAnalytics.Storage.Removal;

/// <summary>Whether a text or a file mentions an athlete: by id or code as written, by name or alias whatever the case, accents, spacing and order of "Last, First".</summary>
internal sealed partial class Mention
{
    private const string Removed = "(removed)";

    // What is still searched in a packed file; beyond it the file counts as not searchable.
    private const long MostUnpackedBytes = 256L << 20;

    private readonly string[] _exact;
    private readonly string[] _names;
    private readonly string[] _keys;

    /// <summary>Prepares the search.</summary>
    /// <param name="athlete">Whom to look for.</param>
    /// <param name="byNameOnly">Whether id and code are no mention.</param>
    public Mention(Athlete athlete, bool byNameOnly = false)
    {
        _exact = byNameOnly ? [] : [athlete.Id, athlete.Code];
        _names = [athlete.DisplayName, .. athlete.Aliases];
        _keys = [.. _names.SelectMany(Orders).Where(key => key.Length > 0).Select(key => $" {key} ").Distinct(StringComparer.Ordinal)];
    }

    public bool In(string? text) => !string.IsNullOrWhiteSpace(text) && In(SearchedText.Of(text));

    /// <summary>Whether a text that is searched for several athletes mentions this one.</summary>
    public bool In(SearchedText text) =>
        _exact.Any(word => HasWord(text.Text, word)) || Array.Exists(_keys, name => text.Key.Contains(name, StringComparison.Ordinal) || text.SplitKey?.Contains(name, StringComparison.Ordinal) == true);

    /// <summary>The text without the mention; replaced altogether where the name is written too differently to be cut out.</summary>
    public string? Erase(string? text) => Erase(text, Removed);

    /// <summary>The text with another word in the place of the mention; that word alone where the name is written too differently to be cut out.</summary>
    public string? Erase(string? text, string instead)
    {
        if (!In(text)) return text;
        var erased = _names.Aggregate(text!, (rest, name) => rest.Replace(name, instead, StringComparison.OrdinalIgnoreCase));
        erased = _exact.Aggregate(erased, (rest, word) => Regex.Replace(rest, $@"(?<!\w){Regex.Escape(word)}(?!\w)", instead));
        return In(erased) ? instead : erased;
    }

    /// <summary>Whether a file mentions the athlete, in its name or its content; null where the content cannot be searched.</summary>
    public bool? InFile(string path)
    {
        if (In(Path.GetFileNameWithoutExtension(path))) return true;
        var content = File.ReadAllBytes(path);
        return content.AsSpan().StartsWith("PK\u0003\u0004"u8) ? InArchive(content) : InBytes(content);
    }

    private bool? InArchive(byte[] content)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(content), ZipArchiveMode.Read);
            if (archive.Entries.Sum(entry => entry.Length) > MostUnpackedBytes) return null;
            var searched = archive.Entries.Select(entry => In(entry.FullName) ? true : InBytes(Unpack(entry))).ToList();
            return searched.Contains(true) ? true : searched.Contains(false) ? false : null;
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    private static byte[] Unpack(ZipArchiveEntry entry)
    {
        using var packed = entry.Open();
        using var content = new MemoryStream();
        packed.CopyTo(content);
        return content.Length <= MostUnpackedBytes ? content.ToArray() : throw new InvalidDataException("The archive unpacks to more than it says.");
    }

    private bool? InBytes(byte[] content)
    {
        var text = Decode(content);
        if (text is null) return null;
        if (In(text)) return true;

        // HTML, workbooks and documents write signs as entities and may break a name by tags; notebooks and JSON write \u0000.
        if (text.Contains('<', StringComparison.Ordinal) && (In(WebUtility.HtmlDecode(Tags().Replace(text, " "))) || In(WebUtility.HtmlDecode(Tags().Replace(text, ""))))) return true;
        return text.Contains("\\u", StringComparison.Ordinal) && In(Escapes().Replace(text, match => ((char)Convert.ToUInt16(match.Groups[1].Value, 16)).ToString()));
    }

    private static string? Decode(byte[] content)
    {
        if (content.AsSpan().StartsWith<byte>([0xFF, 0xFE])) return Encoding.Unicode.GetString(content);
        if (content.AsSpan().StartsWith<byte>([0xFE, 0xFF])) return Encoding.BigEndianUnicode.GetString(content);
        if (content.Contains((byte)0)) return null;
        return Utf8.IsValid(content) ? Encoding.UTF8.GetString(content) : Encoding.Latin1.GetString(content);
    }

    /// <summary>The name as written, with its last word first, and turned where it has a comma.</summary>
    private static IEnumerable<string> Orders(string name)
    {
        var key = NameKey.Of(name);
        yield return key;
        var last = key.LastIndexOf(' ');
        if (last > 0) yield return $"{key[(last + 1)..]} {key[..last]}";
        if (NameKey.OfTurned(name) is { } turned) yield return turned;
    }

    private static bool HasWord(string text, string word)
    {
        for (var place = text.IndexOf(word, StringComparison.Ordinal); place >= 0; place = text.IndexOf(word, place + 1, StringComparison.Ordinal))
        {
            var end = place + word.Length;
            if ((place == 0 || !IsWord(text[place - 1])) && (end == text.Length || !IsWord(text[end]))) return true;
        }

        return false;

        static bool IsWord(char sign) => char.IsLetterOrDigit(sign) || sign == '_';
    }

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\\u([0-9a-fA-F]{4})")]
    private static partial Regex Escapes();
}
