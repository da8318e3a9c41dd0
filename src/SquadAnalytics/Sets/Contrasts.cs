using System.Numerics;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Weights of the late and the kink contrast, and the sign-flip reference of the largest of them.</summary>
internal static class Contrasts
{
    /// <summary>Weights w of c = Σ w_k y_k: -1/b for the first b sets, 1/(n - b) for the others.</summary>
    public static double[] Late(int sets, int after) => [.. Enumerable.Range(1, sets).Select(k => k <= after ? -1.0 / after : 1.0 / (sets - after))];

    /// <summary>The late contrast in words: mean(sets 4-6) - mean(sets 1-3); a single set is named as one.</summary>
    public static string LateWords(int sets, int after)
    {
        static string Mean(int from, int to) => from == to ? FormattableString.Invariant($"set {from}") : FormattableString.Invariant($"mean(sets {from}-{to})");
        return $"{Mean(after + 1, sets)} - {Mean(1, after)}";
    }

    /// <summary>Weights of κ = c - (n/2) β̂ with β̂ the least-squares slope; under a straight line E c = (n/2) β for every b.</summary>
    public static double[] Kink(int sets, int after)
    {
        var centre = (sets + 1) / 2.0;
        var squares = sets * ((double)sets * sets - 1) / 12;
        return [.. Late(sets, after).Select((weight, index) => weight - sets / 2.0 * (index + 1 - centre) / squares)];
    }

    /// <summary>What a unit step after b adds to κ: the part of the step that a straight line leaves, b (n - b) / n Σ w².</summary>
    public static double KinkOfStep(int sets, int after)
    {
        var kink = Kink(sets, after);
        return (double)after * (sets - after) / sets * Apply(kink, kink);
    }

    /// <summary>Weights of the least-squares slope of y on the set, a step after b fitted beside it.</summary>
    public static double[] SlopeBesideStep(int sets, int after)
    {
        var late = Late(sets, after);
        double[] centred = [.. Enumerable.Range(1, sets).Select(k => k - (sets + 1) / 2.0)];
        var share = Apply(late, centred) / Apply(late, late);
        double[] left = [.. centred.Select((x, index) => x - share * late[index])];
        var squares = Apply(left, left);
        return [.. left.Select(x => x / squares)];
    }

    /// <summary>Weights of (n/2) β̂, β̂ the least-squares slope: what κ leaves of the late contrast, the same for every b.</summary>
    public static double[] Line(int sets, int after) => [.. Late(sets, after).Zip(Kink(sets, after), (late, kink) => late - kink)];

    /// <summary>The weights for each set before the last, where b is searched for.</summary>
    public static double[][] Every(int sets, Func<int, int, double[]> weights) => [.. Enumerable.Range(1, sets - 1).Select(after => weights(sets, after))];

    public static double Apply(double[] weights, double[] profile)
    {
        double sum = 0;
        for (var k = 0; k < weights.Length; k++) sum += weights[k] * profile[k];
        return sum;
    }

    /// <summary>The weights divided by √Σ w², so that the contrast of one session has the set noise as its standard error where sets vary independently.</summary>
    public static double[] UnitLength(double[] weights)
    {
        var length = Math.Sqrt(Apply(weights, weights));
        return [.. weights.Select(weight => weight / length)];
    }

    /// <summary>
    /// Share of sign flips whose largest mean over b reaches that of the break found: all 2^m flips up to 12 sessions, otherwise 9 999
    /// random ones beside the observed signs.
    /// </summary>
    /// <remarks>The contrasts have weights of unit length and are not divided by their own scatter over a few sessions: a row whose values
    /// happen to lie close together would otherwise reach a large t under many flips and hide a real break.</remarks>
    /// <param name="values">One row per b: the contrast of each session, with weights of unit length.</param>
    /// <param name="found">The row of the break found, from 0.</param>
    /// <param name="seed">Seed of the random flips.</param>
    public static double SignFlipPValue(double[][] values, int found, int seed)
    {
        const int exhaustive = 12, draws = 9_999;
        var m = values[0].Length;
        var random = new SeededRandom(seed);
        var all = m <= exhaustive;
        var flips = all ? 1 << m : draws;
        var signs = new double[m];
        Array.Fill(signs, 1);
        double[][][] byEight = all ? [] : [.. values.Select(SumsByEight)];
        double[] sums = [.. values.Select(row => row.Sum())];
        var reached = all ? 0 : 1;
        // A flip that equals the observed signs must count in spite of rounding.
        var bound = sums[found] - 1e-9 * Math.Abs(sums[found]);
        for (var flip = 0; flip < flips; flip++)
        {
            // All patterns are visited so that neighbours differ in one sign (Gray's order).
            if (!all) Draw(random, byEight, sums);
            else if (flip > 0) Turn(BitOperations.TrailingZeroCount(flip), values, signs, sums);
            if (Largest(sums) >= bound) reached++;
        }

        return (double)reached / (all ? flips : draws + 1);
    }

    private static void Turn(int session, double[][] values, double[] signs, double[] sums)
    {
        signs[session] = -signs[session];
        for (var row = 0; row < values.Length; row++) sums[row] += 2 * signs[session] * values[row][session];
    }

    private static void Draw(SeededRandom random, double[][][] byEight, double[] sums)
    {
        Array.Clear(sums);
        ulong bits = 0;
        for (var eight = 0; eight < byEight[0].Length; eight++)
        {
            bits = eight % 8 == 0 ? random.NextBits() : bits >> 8;
            for (var row = 0; row < sums.Length; row++) sums[row] += byEight[row][eight][bits & 255];
        }
    }

    /// <summary>For every eight sessions their sum under each pattern of signs (a bit that is set turns a session), so that a random flip takes one addition for eight sessions.</summary>
    private static double[][] SumsByEight(double[] row) => [.. row.Chunk(8).Select(eight =>
    {
        var sums = new double[256];
        sums[0] = eight.Sum();
        for (var pattern = 1; pattern < sums.Length; pattern++)
            sums[pattern] = sums[pattern & (pattern - 1)] - 2 * eight.ElementAtOrDefault(BitOperations.TrailingZeroCount(pattern));
        return sums;
    })];

    private static double Largest(double[] sums)
    {
        var largest = sums[0];
        for (var row = 1; row < sums.Length; row++) largest = Math.Max(largest, sums[row]);
        return largest;
    }
}
