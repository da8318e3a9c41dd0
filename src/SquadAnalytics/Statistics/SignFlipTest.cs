using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Permutation test of a mean difference: under no effect the sign of every difference is a coin flip.</summary>
/// <param name="Mean">The observed mean difference.</param>
/// <param name="PValue">Two-sided p-value: share of sign patterns whose |mean| is at least the observed one.</param>
/// <param name="Patterns">How many patterns were counted (random ones include the observed).</param>
/// <param name="IsExact">Whether all patterns were counted.</param>
/// <remarks>Assumes differences symmetric about 0 under the hypothesis. Fisher (1935), The design of experiments (from memory).</remarks>
public sealed record SignFlipTest(double Mean, double PValue, int Patterns, bool IsExact)
{
    // Patterns whose mean equals the observed one but for rounding count as at least as large.
    private const double Slack = 1e-9;

    /// <summary>Tests differences.</summary>
    /// <param name="differences">The differences, later minus earlier.</param>
    /// <param name="options">Settings; the defaults serve.</param>
    /// <returns>The test, or <see cref="Refusal.TooFewObservations"/> without differences.</returns>
    /// <exception cref="ArgumentException">A number is not finite, or a setting is outside its range.</exception>
    public static Answer<SignFlipTest> Fit(IReadOnlyList<double> differences, SignFlipOptions? options = null)
    {
        options ??= new SignFlipOptions();
        if (options.ExactUpTo is < 0 or > 24) throw new ArgumentOutOfRangeException(nameof(options), options.ExactUpTo, "ExactUpTo lies between 0 and 24.");
        Require.AtLeast(1, options.RandomFlips);
        var d = Numbers.Of(differences, 0);
        if (d.Length == 0) return new NotEstimable("the sign-flip test", Refusal.TooFewObservations, 1, 0, "differences");
        var total = CompensatedSum.Of(d);
        var bound = Math.Abs(total) - Slack * d.Length;
        return d.Length <= options.ExactUpTo
            ? Counted(d, total, CountAll(d, bound), 1 << d.Length, isExact: true)
            : Counted(d, total, 1 + CountRandom(d, bound, options), options.RandomFlips + 1, isExact: false);
    }

    private static SignFlipTest Counted(double[] d, double total, int extreme, int patterns, bool isExact) =>
        new(total / d.Length, extreme / (double)patterns, patterns, isExact);

    private static int CountAll(double[] d, double bound)
    {
        var extreme = 0;
        void Visit(int place, double sum)
        {
            if (place == d.Length)
            {
                if (Math.Abs(sum) >= bound) extreme++;
                return;
            }

            Visit(place + 1, sum + d[place]);
            Visit(place + 1, sum - d[place]);
        }

        Visit(0, 0);
        return extreme;
    }

    private static int CountRandom(double[] d, double bound, SignFlipOptions options)
    {
        var random = new SeededRandom(options.Seed);
        var extreme = 0;
        for (var flip = 0; flip < options.RandomFlips; flip++)
        {
            if (Math.Abs(d.Sum(difference => random.NextSign() * difference)) >= bound) extreme++;
        }

        return extreme;
    }
}
