using System.Text;

namespace SquadAnalytics.Storage.Tables;

/// <summary>How enumeration values are written in files: <c>NotFinished</c> is <c>not_finished</c>.</summary>
internal static class Word
{
    public static string Of<T>(T value)
        where T : struct, Enum => Of((Enum)value);

    public static string Of(Enum value)
    {
        var word = new StringBuilder();
        foreach (var letter in value.ToString())
        {
            if (char.IsUpper(letter) && word.Length > 0) word.Append('_');
            word.Append(char.ToLowerInvariant(letter));
        }

        return word.ToString();
    }

    /// <summary>All words of an enumeration with their values.</summary>
    public static IReadOnlyDictionary<string, T> All<T>()
        where T : struct, Enum => Enum.GetValues<T>().ToDictionary(Of, StringComparer.Ordinal);
}
