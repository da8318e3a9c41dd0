using System.Globalization;
using System.Text;

namespace SquadAnalytics.Import;

/// <summary>What remains of a name when case, accents, spacing and punctuation are taken away: equal keys mean "perhaps the same", never "the same".</summary>
internal static class NameKey
{
    // Letters that Unicode does not decompose, and how they are commonly written without their sign.
    private static readonly Dictionary<char, string> Plain = new()
    {
        ['ß'] = "SS", ['ẞ'] = "SS", ['ø'] = "O", ['Ø'] = "O", ['ł'] = "L", ['Ł'] = "L", ['đ'] = "D", ['Đ'] = "D", ['ð'] = "D", ['Ð'] = "D",
        ['æ'] = "AE", ['Æ'] = "AE", ['œ'] = "OE", ['Œ'] = "OE", ['þ'] = "TH", ['Þ'] = "TH", ['ı'] = "I", ['ħ'] = "H", ['Ħ'] = "H",
    };

    /// <summary>The key of a name, its words in the order written.</summary>
    public static string Of(string name)
    {
        var key = new StringBuilder(name.Length);
        foreach (var sign in Decomposed(name))
        {
            if (Plain.TryGetValue(sign, out var plain)) key.Append(plain);
            else if (char.IsLetterOrDigit(sign) || char.IsSurrogate(sign)) key.Append(char.ToUpperInvariant(sign));
            else if (char.GetUnicodeCategory(sign) is UnicodeCategory.SpacingCombiningMark) key.Append(sign);
            else if (IsGap(sign) && key.Length > 0 && key[^1] != ' ') key.Append(' ');
        }

        return key.ToString().TrimEnd();
    }

    /// <summary>The key of "Last, First" as "First Last"; null where there is not exactly one comma between two texts.</summary>
    public static string? OfTurned(string name)
    {
        var comma = name.IndexOf(',', StringComparison.Ordinal);
        if (comma <= 0 || name.IndexOf(',', comma + 1) >= 0) return null;
        var turned = Of($"{name[(comma + 1)..]} {name[..comma]}");
        return turned.Length == 0 || Of(name[(comma + 1)..]).Length == 0 ? null : turned;
    }

    // Apostrophes, points and marks vanish; everything else that is no letter separates words.
    private static bool IsGap(char sign) =>
        char.IsWhiteSpace(sign)
        || (sign is not ('\'' or '\u2019' or '\u2018' or '`' or '\u00B4' or '.')
        && char.GetUnicodeCategory(sign) is not (UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format or UnicodeCategory.Control));

    // A lone half of a surrogate pair cannot be normalised: such a text is compared as it stands.
    private static string Decomposed(string name)
    {
        try
        {
            return name.Normalize(NormalizationForm.FormKD);
        }
        catch (ArgumentException)
        {
            return name;
        }
    }
}
