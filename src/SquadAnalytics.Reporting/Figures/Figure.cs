using System.Text;
using System.Xml.Linq;

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
        return StandAlone(SvgPicture.Of(drawing, AlternativeText), drawing);
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
    public string ToHtml() => Html(Inline(FigureSize.Wide), Inline(FigureSize.Narrow));

    /// <summary>All forms at once, which is quicker than one after the other: the wide drawing is made once for page and file, the others on other cores.</summary>
    public FigureForms ToForms()
    {
        var png = Task.Run(() => ToPng());
        var narrow = Task.Run(() => Inline(FigureSize.Narrow));
        using var drawing = Draw(FigureSize.Wide);
        var wide = SvgPicture.Of(drawing, AlternativeText);
        var svg = StandAlone(wide, drawing);
        return new FigureForms(Html(SvgPicture.Inline(wide), narrow.GetAwaiter().GetResult()), svg, png.GetAwaiter().GetResult());
    }

    /// <summary>Title, content in words, and caption.</summary>
    public sealed override string ToString() => $"{Title}\n{AlternativeText}\n{Caption}\n";

    /// <summary>Composes the picture for a width.</summary>
    internal abstract Drawing Draw(FigureSize size);

    private string StandAlone(XElement picture, Drawing drawing) => SvgPicture.StandAlone(picture, drawing, Title, AlternativeText, OverAthletes);

    private string Inline(FigureSize size)
    {
        using var drawing = Draw(size);
        return SvgPicture.Inline(SvgPicture.Of(drawing, AlternativeText));
    }

    private string Html(string wide, string narrow)
    {
        var html = new StringBuilder("<figure>\n");
        html.Append("<div class=\"wide\">").Append(wide).Append("</div>\n");
        html.Append("<div class=\"narrow\">").Append(narrow).Append("</div>\n");
        html.Append("<figcaption><strong>").Append(Internals.Html.Sentence(Title)).Append("</strong> ").Append(Internals.Html.Sentence(Caption)).Append("</figcaption>\n</figure>\n");
        return html.ToString();
    }
}
