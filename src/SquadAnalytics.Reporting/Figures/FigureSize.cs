namespace SquadAnalytics.Reporting.Figures;

/// <summary>For which width a figure is drawn. Both are drawn with letters of the same size, so that neither has to be shrunk to be read.</summary>
public enum FigureSize
{
    /// <summary>For a desktop page and for the text width of A4: 720 units wide.</summary>
    Wide,

    /// <summary>For a phone: 360 units wide.</summary>
    Narrow,
}
