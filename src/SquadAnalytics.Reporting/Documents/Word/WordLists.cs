using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Numbered and bulleted lists; every numbered list begins at 1.</summary>
internal sealed class WordLists
{
    private const int Bullets = 1;
    private const int Numbers = 2;
    private readonly Numbering _numbering;
    private int _next = 1;

    public WordLists(NumberingDefinitionsPart part)
    {
        _numbering = new Numbering(Definition(Bullets, NumberFormatValues.Bullet, "•"), Definition(Numbers, NumberFormatValues.Decimal, "%1."));
        part.Numbering = _numbering;
    }

    /// <summary>Begins a list and returns its number.</summary>
    public int Begin(bool numbered)
    {
        var instance = new NumberingInstance(new AbstractNumId { Val = numbered ? Numbers : Bullets }) { NumberID = _next };
        if (numbered) instance.AppendChild(new LevelOverride(new StartOverrideNumberingValue { Val = 1 }) { LevelIndex = 0 });
        _numbering.AppendChild(instance);
        return _next++;
    }

    private static AbstractNum Definition(int id, NumberFormatValues format, string text) => new(
        new MultiLevelType { Val = MultiLevelValues.SingleLevel },
        new Level(
            new StartNumberingValue { Val = 1 },
            new NumberingFormat { Val = format },
            new LevelText { Val = text },
            new LevelJustification { Val = LevelJustificationValues.Left },
            new PreviousParagraphProperties(new Indentation { Left = "400", Hanging = "400" }))
        { LevelIndex = 0 })
    { AbstractNumberId = id };
}
