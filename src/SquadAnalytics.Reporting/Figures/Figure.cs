using System.Text;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// A figure that answers one question. It has a title (the question), a caption (what is drawn, with levels and counts), a text that says
/// the same to those who do not see it, and it becomes SVG, PNG or an HTML figure.
/// </summary>
public abstract record Figure
{
    private const int PrintDotsPerUnit = 3;

    private protected Figure()
    {
    }

    /// <summary>The question that the figure answers.</summary>
    public abstract string Title { get; }

    /// <summary>What is drawn: marks, levels, counts, who was left out.</summary>
    public abstract string Caption { get; }

    /// <summary>The content in words, for those who do not see the picture.</summary>
    public abstract string AlternativeText { get; }

    /// <summary>Over how many athletes its aggregates are; null where it shows none. What is exported or shared withholds a figure of fewer than five.</summary>
    public virtual int? OverAthletes { get; init; }

    /// <summary>The figure as an SVG file that stands alone: white ground, named fallback typefaces.</summary>
    /// <param name="size">For which width it is drawn.</param>
    public string ToSvg(FigureSize size = FigureSize.Wide)
    {
        using var drawing = Draw(size);
        return SvgPicture.StandAlone(drawing, Title, AlternativeText, OverAthletes);
    }

    /// <summary>The figure as PNG; at 3 dots per unit the wide size prints at 300 dots per inch on A4.</summary>
    /// <param name="size">For which width it is drawn.</param>
    /// <param name="dotsPerUnit">Resolution, from 1 to 8.</param>
    public byte[] ToPng(FigureSize size = FigureSize.Wide, int dotsPerUnit = PrintDotsPerUnit)
    {
        if (dotsPerUnit is < 1 or > 8) throw new ArgumentOutOfRangeException(nameof(dotsPerUnit), dotsPerUnit, "The resolution lies between 1 and 8 dots per unit.");
        using var drawing = Draw(size);
        return drawing.ToPng(dotsPerUnit);
    }

    /// <summary>The figure as an HTML figure with caption: drawn for a wide and for a narrow page, of which the page's style shows one.</summary>
    public string ToHtml()
    {
        var html = new StringBuilder("<figure>\n");
        using var wide = Draw(FigureSize.Wide);
        using var narrow = Draw(FigureSize.Narrow);
        html.Append("<div class=\"wide\">").Append(SvgPicture.Inline(wide, AlternativeText)).Append("</div>\n");
        html.Append("<div class=\"narrow\">").Append(SvgPicture.Inline(narrow, AlternativeText)).Append("</div>\n");
        html.Append("<figcaption><strong>").Append(Html.Sentence(Title)).Append("</strong> ").Append(Html.Sentence(Caption)).Append("</figcaption>\n</figure>\n");
        return html.ToString();
    }

    /// <summary>Title, content in words, and caption.</summary>
    public sealed override string ToString() => $"{Title}\n{AlternativeText}\n{Caption}\n";

    /// <summary>Composes the picture for a width.</summary>
    internal abstract Drawing Draw(FigureSize size);
}
