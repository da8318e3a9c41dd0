namespace SquadAnalytics.Reporting.Figures;

/// <summary>Lengths of strokes and gaps; a line type repeats what a colour says.</summary>
internal static class Dashes
{
    public static readonly float[] Solid = [];
    public static readonly float[] Even = [8, 6];
    public static readonly float[] Fine = [2.5f, 3.5f];
    public static readonly float[] Long = [14, 5];
}
