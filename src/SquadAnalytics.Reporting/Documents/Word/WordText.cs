using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Paragraphs, runs and fields.</summary>
internal static class WordText
{
    public static Paragraph Paragraph(string style, params OpenXmlElement[] runs) =>
        new([new ParagraphProperties(new ParagraphStyleId { Val = style }), .. runs]);

    public static Paragraph Paragraph(string style, string text) => Paragraph(style, Run(text));

    public static Run Run(string text, bool bold = false, bool italic = false, bool code = false, VerticalPositionValues? position = null)
    {
        var run = new Run();
        var properties = new RunProperties();
        if (code) properties.AppendChild(new RunStyle { Val = "Code" });
        if (bold) properties.AppendChild(new Bold());
        if (italic) properties.AppendChild(new Italic());
        if (position is { } vertical) properties.AppendChild(new VerticalTextAlignment { Val = vertical });
        if (properties.HasChildren) run.AppendChild(properties);
        run.AppendChild(new Text(Allowed(text)) { Space = SpaceProcessingModeValues.Preserve });
        return run;
    }

    /// <summary>A field that the word processor can renew, with the text it shows now.</summary>
    public static Run[] Field(string instruction, string shown) =>
    [
        new(new FieldChar { FieldCharType = FieldCharValues.Begin }),
        new(new FieldCode(instruction) { Space = SpaceProcessingModeValues.Preserve }),
        new(new FieldChar { FieldCharType = FieldCharValues.Separate }),
        new(new Text(shown)),
        new(new FieldChar { FieldCharType = FieldCharValues.End }),
    ];

    /// <summary>Characters that XML forbids become U+FFFD.</summary>
    public static string Allowed(string text) =>
        string.Concat(text.EnumerateRunes().Select(rune => rune.Value is (< 0x20 and not '\t' and not '\n' and not '\r') or 0xFFFE or 0xFFFF ? "\uFFFD" : rune.ToString()));
}
