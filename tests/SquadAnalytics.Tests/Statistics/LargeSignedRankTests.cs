using System.Diagnostics;
using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class LargeSignedRankTests
{
    /// <summary>301 differences without ties or zeros: round(sin(1.7 i) * 3 + (37 i mod 101) / 20 - 2, 6).</summary>
    private static double[] Many { get; } = [.. Enumerable.Range(1, 301).Select(i => Math.Round(Math.Sin(1.7 * i) * 3 + 37 * i % 101 / 20.0 - 2, 6))];

    [Fact]
    public void Many_differences_are_tested_by_the_normal_distribution()
    {
        // R 4.2.2: w <- outer(d, d, "+") / 2; w <- sort(w[upper.tri(w, TRUE)]); median(w); w[20240]; w[45451 + 1 - 20240]; wilcox.test(d, exact = FALSE); the same with alternative = "greater".
        var test = SignedRankTest.Fit(Many, ConfidenceLevel.Ninety).GetOrThrow();
        Assert.False(test.IsExact);
        Assert.Equal(27633, test.V);
        Assert.Equal(0.5159195, test.HodgesLehmann, 1e-7);
        Assert.Equal(0.2576845, test.Interval!.Value.Lower, 1e-7);
        Assert.Equal(0.7822905, test.Interval!.Value.Upper, 1e-7);
        ReferenceData.AssertClose(0.00116646727912, test.PValue, 1e-9);
        ReferenceData.AssertClose(0.000583233639558, test.PValueGreater, 1e-9);
        ReferenceData.AssertClose(0.900026648503, test.AchievedConfidence!.Value, 1e-9);

        // R 4.2.2: wilcox.test(d, exact = TRUE): 0.00111652800763, the exact value that the approximation stands for.
        Assert.Equal(0.00111652800763, test.PValue, 1e-4);
    }

    [Fact]
    public void Selection_finds_what_sorting_all_averages_finds() =>
        Gen.Double[-10, 10].Array[1, 30].Sample(numbers =>
        {
            double[] sorted = [.. numbers.Order()];
            double[] averages = [.. sorted.SelectMany((one, i) => sorted.Skip(i).Select(other => one / 2 + other / 2)).Order()];
            for (var rank = 1; rank <= averages.Length; rank += 1 + averages.Length / 7) Assert.Equal(averages[rank - 1], WalshSelection.AtRank(sorted, rank));
        }, iter: 200);

    [Fact]
    public void Forty_thousand_differences_take_no_quadratic_time()
    {
        // All 800 million averages would take minutes and 6 GB; the limit is generous for a busy machine.
        var random = new SeededRandom(7);
        double[] d = [.. Enumerable.Range(0, 40_000).Select(_ => random.NextNormal() - 0.1)];
        var watch = Stopwatch.StartNew();
        var test = SignedRankTest.Fit(d, ConfidenceLevel.Ninety).GetOrThrow();
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), $"took {watch.Elapsed}");
        Assert.Equal(-0.1, test.HodgesLehmann, 0.03);
        Assert.True(test.PValueLess < 1e-10);
    }
}
