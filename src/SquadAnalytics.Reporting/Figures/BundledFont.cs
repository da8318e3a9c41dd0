using ScottPlot;
using SkiaSharp;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// The typeface that comes with the library, so that figures and reports read the same where no font is installed: Source Sans 3, under the
/// SIL Open Font License 1.1. Its figures are all of one width, so numbers line up.
/// </summary>
public static class BundledFont
{
    /// <summary>Name of the family.</summary>
    public const string Family = "Source Sans 3";

    /// <summary>The family and what stands in for it where a picture file is viewed without it.</summary>
    public const string Stack = "'Source Sans 3', 'Segoe UI', 'Helvetica Neue', 'Noto Sans', 'Liberation Sans', Arial, sans-serif";

    /// <summary>The name under which the drawing library knows the heavier weight.</summary>
    internal const string SemiBold = "Source Sans 3 SemiBold";

    private static readonly Lazy<SKTypeface> RegularFace = new(() => SKTypeface.FromStream(EmbeddedFile.Open("SourceSans3-Regular.ttf")));
    private static readonly Lazy<SKTypeface> SemiBoldFace = new(() => SKTypeface.FromStream(EmbeddedFile.Open("SourceSans3-SemiBold.ttf")));
    private static readonly Lazy<bool> Registered = new(Register);

    /// <summary>The license of the typeface.</summary>
    public static string License => EmbeddedFile.ReadText("LICENSE.txt");

    /// <summary>Style rules that carry the two weights inside a page.</summary>
    internal static string FontFaces => FontFace("SourceSans3-Regular.woff2", 400) + FontFace("SourceSans3-SemiBold.woff2", 600);

    /// <summary>Makes the typeface known to the drawing library; once per process, whoever asks first.</summary>
    internal static void MakeAvailable() => _ = Registered.Value;

    private static bool Register()
    {
        Fonts.FontResolvers.Insert(0, new Resolver());
        return true;
    }

    private static string FontFace(string file, int weight) =>
        $"@font-face{{font-family:'{Family}';font-weight:{weight.ToString(System.Globalization.CultureInfo.InvariantCulture)};font-display:block;src:url(data:font/woff2;base64,{Convert.ToBase64String(EmbeddedFile.Read(file))}) format('woff2')}}\n";

    /// <summary>The typeface itself, for measuring.</summary>
    internal static SKTypeface Typeface(bool semiBold) => semiBold ? SemiBoldFace.Value : RegularFace.Value;

    /// <summary>The typeface for a text: the bundled one, or an installed one where the text is in a script that it lacks.</summary>
    internal static SKTypeface TypefaceFor(string text, bool semiBold)
    {
        var bundled = Typeface(semiBold);
        var missing = text.EnumerateRunes().FirstOrDefault(rune => rune.Value > ' ' && bundled.GetGlyph(rune.Value) == 0);
        return missing == default ? bundled : SKFontManager.Default.MatchCharacter(missing.Value) ?? bundled;
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing width) => Named(fontName);

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => Named(fontName);

        private static SKTypeface? Named(string fontName) => fontName switch
        {
            Family => Typeface(semiBold: false),
            SemiBold => Typeface(semiBold: true),
            _ => null,
        };
    }
}
