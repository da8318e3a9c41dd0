using SquadAnalytics.Import;

namespace SquadAnalytics.Storage.Removal;

/// <summary>A text prepared to be searched for the names of several athletes.</summary>
/// <param name="Text">The text as written.</param>
/// <param name="Key">Its name key between spaces.</param>
/// <param name="SplitKey">The key with apostrophes and points read as ends of words; null where there is none.</param>
internal readonly record struct SearchedText(string Text, string Key, string? SplitKey)
{
    private static readonly char[] WordEnds = ['\'', '\u2019', '\u2018', '`', '\u00B4', '.'];
    private static readonly System.Buffers.SearchValues<char> WordEndSigns = System.Buffers.SearchValues.Create(WordEnds);

    /// <summary>Prepares a text.</summary>
    /// <remarks>A name key drops apostrophes and points, as O'Neil wants it; "Ada's" and "Ada.Neil" want them to end a word.</remarks>
    public static SearchedText Of(string text) =>
        new(text, $" {NameKey.Of(text)} ", text.AsSpan().ContainsAny(WordEndSigns) ? $" {NameKey.Of(string.Join(' ', text.Split(WordEnds)))} " : null);
}
