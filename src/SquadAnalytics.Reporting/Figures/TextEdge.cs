namespace SquadAnalytics.Reporting.Figures;

/// <summary>Which edge of a text stands at its place.</summary>
internal enum TextEdge
{
    Left,
    Middle,
    Right,
}
