using Microsoft.CodeAnalysis.CSharp.Scripting;
using SquadAnalytics.Notebooks.Scripting;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Compiles a few lines and draws a figure on another core while the engine is being made, so that the first cells find the compiler and
/// the drawing library awake. The engine takes about a second to be made and uses one core; this saves about that second.
/// </summary>
internal static class Rehearsal
{
    /// <summary>What a notebook's cells look like to the compiler: a declaration, a lambda, an object initializer, a match, an interpolation.</summary>
    private const string Cell = """
        string named = "A"; int count = 3; double level = 0.9;
        var several = Enumerable.Range(1, count).Select(number => new Finding($"{named}: {number} of {count}")).Where(finding => finding.Sentence.Length > 0).ToList();
        var use = new SelectionOptions { Familiarisation = count };
        new Answer<Finding>(several[0]).Match<object>(found => new Findings(several), refused => refused.ToString())
        """;

    /// <summary>Begins, and returns at once. What fails here fails again, and is told, when a cell needs it.</summary>
    public static void Begin(ScriptSetup setup)
    {
        var how = Environment.GetEnvironmentVariable("SQX") ?? "cd";
        if (how.Contains('c')) new Thread(() => CompileAsync(setup).GetAwaiter().GetResult()) { IsBackground = true }.Start();
        if (how.Contains('d')) new Thread(Draw) { IsBackground = true }.Start();
    }

    private static async Task CompileAsync(ScriptSetup setup)
    {
        var options = setup.For(0);
        var state = await CSharpScript.RunAsync(Prelude.Usings(), options).ConfigureAwait(false);
        await state.ContinueWithAsync(Cell).ConfigureAwait(false);
    }

    private static void Draw()
    {
        var figure = new HowManyMoreTests([new PowerCurve("1 s", [new PowerAt(1, 0.2), new PowerAt(2, 0.4)])], 0.8, "none");
        _ = figure.ToHtml();
        _ = figure.ToSvg();
        _ = figure.ToPng();
    }
}
