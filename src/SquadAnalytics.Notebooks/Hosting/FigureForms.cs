using System.Runtime.CompilerServices;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>The forms of one figure. The picture, which takes longest, is drawn on another core while the others are written.</summary>
internal sealed class FigureForms
{
    private static readonly ConditionalWeakTable<Figure, FigureForms> Known = [];

    private readonly Task<string> _png;
    private readonly Task<string> _svg;

    private FigureForms(Figure figure)
    {
        _png = Task.Run(() => Convert.ToBase64String(figure.ToPng()));
        _svg = Task.Run(() => figure.ToSvg());
        Html = figure.ToHtml();
    }

    /// <summary>The figure with its caption, drawn wide and narrow.</summary>
    public string Html { get; }

    /// <summary>The drawing.</summary>
    public string Svg => _svg.GetAwaiter().GetResult();

    /// <summary>The picture, base64.</summary>
    public string Png => _png.GetAwaiter().GetResult();

    /// <summary>The forms of a figure, made once.</summary>
    public static FigureForms Of(Figure figure) => Known.GetValue(figure, static shown => new FigureForms(shown));
}
