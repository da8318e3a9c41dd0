using System.Globalization;
using CsCheck;

namespace SquadAnalytics.Tests;

/// <summary>
/// Property tests on cases that are drawn but always the same ones: a failure is there for everybody, or for nobody. These methods stand in
/// front of the library's own of that name, which draw fresh cases (with a seed too: it settles the first case only). To look for new counterexamples set <c>SQUAD_FRESH_CASES</c> to a number:
/// fresh cases are then drawn, that many times as many.
/// </summary>
internal static class DrawnCases
{
    private const ulong Seed = 20_310_107;

    /// <summary>Checks an assertion on drawn cases.</summary>
    public static void Sample<T>(this Gen<T> cases, Action<T> assert, int iter = 100)
    {
        if (Environment.GetEnvironmentVariable("SQUAD_FRESH_CASES") is { Length: > 0 } times)
        {
            Check.Sample(cases, assert, iter: iter * long.Parse(times, CultureInfo.InvariantCulture), threads: 1);
            return;
        }

        // One call per case: the library keeps a seed for the first case of a call only.
        for (var stream = 1U; stream <= iter; stream++) Check.Sample(cases, assert, seed: new PCG(stream, Seed).ToString(), iter: 1, threads: 1);
    }

    /// <summary>Checks an assertion on drawn pairs.</summary>
    public static void Sample<T1, T2>(this Gen<(T1, T2)> cases, Action<T1, T2> assert, int iter = 100) =>
        cases.Sample(drawn => assert(drawn.Item1, drawn.Item2), iter);

    /// <summary>Checks an assertion on drawn triples.</summary>
    public static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Action<T1, T2, T3> assert, int iter = 100) =>
        cases.Sample(drawn => assert(drawn.Item1, drawn.Item2, drawn.Item3), iter);

    /// <summary>Checks an assertion on drawn quadruples.</summary>
    public static void Sample<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> cases, Action<T1, T2, T3, T4> assert, int iter = 100) =>
        cases.Sample(drawn => assert(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4), iter);
}
