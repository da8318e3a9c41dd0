namespace SquadAnalytics.Reporting.Figures;

/// <summary>Shapes of marks; a shape repeats what a colour says.</summary>
internal enum Dot
{
    Circle,
    OpenCircle,
    Square,
    OpenSquare,
    Diamond,
    Triangle,
}
