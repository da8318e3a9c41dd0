using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>The styles, so that the reader changes the look of all captions, headings or tables in one place.</summary>
internal static class WordStyles
{
    private const string Letters = "Calibri";
    private const string Muted = "59626B";

    public static Styles Build() => new(
        new DocDefaults(
            new RunPropertiesDefault(new RunPropertiesBaseStyle(Fonts(Letters), new FontSize { Val = "22" }, new Languages { Val = "en-GB" })),
            new ParagraphPropertiesDefault(new ParagraphPropertiesBaseStyle(new SpacingBetweenLines { After = "120", Line = "276", LineRule = LineSpacingRuleValues.Auto }))),
        Of("Normal", "Normal", isDefault: true),
        Of("Title", "Title", size: 40, bold: true, after: 60, keepNext: true),
        Of("Subtitle", "Subtitle", size: 26, colour: Muted, after: 120),
        Of("Heading1", "heading 1", size: 30, bold: true, before: 360, after: 80, keepNext: true, outline: 0),
        Of("Heading2", "heading 2", size: 25, bold: true, before: 240, after: 60, keepNext: true, outline: 1),
        Of("Heading3", "heading 3", size: 22, bold: true, before: 200, after: 40, keepNext: true, outline: 2),
        Of("Caption", "caption", size: 19, colour: Muted, before: 60, after: 240),
        Of("TableCaption", "Table Caption", size: 19, colour: Muted, before: 240, after: 80, keepNext: true),
        Of("Picture", "Picture", before: 240, after: 0, keepNext: true),
        Of("Note", "Note", size: 18, colour: Muted, after: 60),
        Of("TableText", "Table Text", size: 20, before: 20, after: 20),
        Of("ListParagraph", "List Paragraph", after: 60),
        Of("Reference", "Reference", after: 60, hanging: 400),
        Of("Quote", "Quote", colour: Muted, left: 400),
        Of("Preformatted", "Preformatted", size: 18, font: "Consolas", after: 0),
        Of("Footer", "footer", size: 18, colour: Muted),
        new Style(new StyleName { Val = "Code" }, new StyleRunProperties(Fonts("Consolas"), new FontSize { Val = "20" })) { Type = StyleValues.Character, StyleId = "Code", CustomStyle = true },
        ReportTable());

    private static Style Of(string id, string name, int? size = null, bool bold = false, string? colour = null, string? font = null, int? before = null, int? after = null, bool keepNext = false, int? outline = null, int? left = null, int? hanging = null, bool isDefault = false)
    {
        var paragraph = new StyleParagraphProperties();
        if (keepNext) paragraph.AppendChild(new KeepNext());
        if (before is not null || after is not null) paragraph.AppendChild(new SpacingBetweenLines { Before = Text(before), After = Text(after) });
        if (left is not null || hanging is not null) paragraph.AppendChild(new Indentation { Left = Text(left ?? hanging), Hanging = Text(hanging) });
        if (outline is { } level) paragraph.AppendChild(new OutlineLevel { Val = level });
        var run = new StyleRunProperties();
        if (font is not null) run.AppendChild(Fonts(font));
        if (bold) run.AppendChild(new Bold());
        if (colour is not null) run.AppendChild(new Color { Val = colour });
        if (size is not null) run.AppendChild(new FontSize { Val = Text(size) });
        var style = new Style(new StyleName { Val = name }) { Type = StyleValues.Paragraph, StyleId = id, Default = isDefault ? true : null };
        if (!isDefault) style.AppendChild(new BasedOn { Val = "Normal" });
        style.AppendChild(new PrimaryStyle());
        if (paragraph.HasChildren) style.AppendChild(paragraph);
        if (run.HasChildren) style.AppendChild(run);
        return style;
    }

    /// <summary>Rules above and below, none between columns.</summary>
    private static Style ReportTable()
    {
        static T Rule<T>(uint size, string colour)
            where T : BorderType, new() => new() { Val = BorderValues.Single, Size = size, Color = colour };
        return new Style(
            new StyleName { Val = "Report Table" },
            new StyleTableProperties(
                new TableBorders(Rule<TopBorder>(8, "1C2126"), Rule<BottomBorder>(8, "1C2126"), Rule<InsideHorizontalBorder>(4, "DDE1E5")),
                new TableCellMarginDefault(new TableCellLeftMargin { Width = 60, Type = TableWidthValues.Dxa }, new TableCellRightMargin { Width = 120, Type = TableWidthValues.Dxa })),
            new TableStyleProperties(
                new RunPropertiesBaseStyle(new Color { Val = Muted }),
                new TableStyleConditionalFormattingTableCellProperties(new TableCellBorders(Rule<BottomBorder>(6, "A3ABB3"))))
            { Type = TableStyleOverrideValues.FirstRow })
        { Type = StyleValues.Table, StyleId = "ReportTable", CustomStyle = true };
    }

    private static RunFonts Fonts(string name) => new() { Ascii = name, HighAnsi = name, ComplexScript = name };

    private static StringValue? Text(int? number) => number is { } value ? new StringValue(value.ToString(System.Globalization.CultureInfo.InvariantCulture)) : null;
}
