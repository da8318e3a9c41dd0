using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>The name of a line, where it ends, and the mark that it carries.</summary>
internal sealed record LineName(string Text, double EndsAt, Color Color, bool Bold, Dot? Dot)
{
    /// <summary>Whether the line is dashed.</summary>
    public bool Dashed { get; init; }
}
