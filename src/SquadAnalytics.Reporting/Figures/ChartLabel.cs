using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>A text of a chart, centred on its height unless it stands on the sheet.</summary>
internal sealed record ChartLabel(string Text, Coordinates At, Color Color)
{
    public TextEdge Edge { get; init; }

    public bool Bold { get; init; }

    public float Size { get; init; } = Chart.LetterSize;

    public float Right { get; init; }

    public float Down { get; init; }

    /// <summary>Whether the place is in units of the sheet instead of the plot's numbers.</summary>
    public bool IsOnSheet { get; init; }

    /// <summary>How far the baseline lies below the place, in letter sizes: a third centres figures and capitals.</summary>
    public float Drop { get; init; } = 0.34f;

    public PlacedText PlacedAt(Pixel place) => new(Text, place.X + Right, place.Y + Down + (Drop * Size), Size, Color, Edge, Bold);
}
