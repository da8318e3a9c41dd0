using System.Runtime.CompilerServices;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>Draws each figure that is shown once, though the engine asks for each of its forms by itself.</summary>
internal static class ShownFigures
{
    private static readonly ConditionalWeakTable<Figure, FigureForms> Known = [];

    /// <summary>The forms of a figure, made once.</summary>
    public static FigureForms Of(Figure figure) => Known.GetValue(figure, static shown => shown.ToForms());
}
