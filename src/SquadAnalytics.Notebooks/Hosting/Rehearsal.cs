using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>Draws a figure on another core while the compiler wakes up, so that the first figure finds the drawing library awake.</summary>
internal static class Rehearsal
{
    /// <summary>Begins, and returns at once. What fails here fails again, and is told, when a cell needs it.</summary>
    public static void Begin() => new Thread(Draw) { IsBackground = true, Name = nameof(Rehearsal) }.Start();

    private static void Draw()
    {
        var figure = new HowManyMoreTests([new PowerCurve("1 s", [new PowerAt(1, 0.2), new PowerAt(2, 0.4)])], 0.8, "none");
        _ = figure.ToForms();
    }
}
