using System.Text.Json;
using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Segmented;

/// <summary>Breaks of the mean against R 4.2.2, strucchange 1.5-3, on the Nile series (calls and tolerances in tests/Reference/segmented/nile_breaks.json).</summary>
public sealed class MeanShiftTests
{
    private static readonly double[] Nile = ReferenceData.Column("segmented", "nile_breaks.csv", "y");

    [Fact]
    public void Breaks_of_the_Nile_agree_with_strucchange()
    {
        var expected = ReferenceData.Values("segmented", "nile_breaks", "breakpoints");
        var fit = MeanShifts.Find(Nile, new MeanShiftOptions { ConfidenceLevel = ConfidenceLevel.NinetyFive }).GetOrThrow();
        Assert.Equal(expected.GetProperty("n").GetInt32(), Nile.Length);
        for (var m = 0; m <= 5; m++)
        {
            ReferenceData.AssertClose(expected.GetProperty("rss")[m].GetDouble(), fit.Models[m].ResidualSumOfSquares, 1e-8);
            ReferenceData.AssertClose(expected.GetProperty("bic")[m].GetDouble(), fit.Models[m].Bic!.Value, 1e-8);

            // The criteria differ only in the price of the 2(m + 1) parameters.
            ReferenceData.AssertClose(expected.GetProperty("bic")[m].GetDouble() - 2 * (m + 1) * (Math.Log(100) - 2), fit.Models[m].Aic!.Value, 1e-8);
        }

        foreach (var row in expected.GetProperty("by_number").EnumerateObject())
        {
            int[] breaks = row.Value.ValueKind == JsonValueKind.Array ? [.. row.Value.EnumerateArray().Select(entry => entry.GetInt32())] : [row.Value.GetInt32()];
            Assert.Equal(breaks, fit.Models[breaks.Length].Breaks.Select(place => place.After));
        }

        Assert.Equal(expected.GetProperty("selected_by_bic").GetInt32(), fit.Selected.Breaks.Single().After);
        var limits = expected.GetProperty("confint_95")[0];
        Assert.Equal(limits.GetProperty("breakpoint").GetInt32(), fit.Selected.Breaks[0].After);
        Assert.Equal(limits.GetProperty("lower95").GetInt32(), fit.Selected.Breaks[0].Earliest);
        Assert.Equal(limits.GetProperty("upper95").GetInt32(), fit.Selected.Breaks[0].Latest);
        for (var s = 0; s < 2; s++) ReferenceData.AssertClose(expected.GetProperty("segment_means")[s].GetDouble(), fit.Selected.Means[s], 1e-8);
    }

    [Fact]
    public void Stability_tests_of_the_Nile_agree_with_strucchange()
    {
        var expected = ReferenceData.Values("segmented", "nile_breaks", "supF");
        var fit = MeanStability.Test(Nile).GetOrThrow();
        ReferenceData.AssertClose(expected.GetProperty("supF").GetDouble(), fit.LargestF.Statistic, 1e-8);
        ReferenceData.AssertClose(expected.GetProperty("break_at").GetDouble(), fit.LargestF.Place!.Value, 0);
        ReferenceData.AssertClose(expected.GetProperty("aveF").GetDouble(), fit.AverageF.Statistic, 1e-8);
        ReferenceData.AssertClose(expected.GetProperty("ols_cusum").GetDouble(), fit.CumulativeSum.Statistic, 1e-8);

        // The reference's p values are Hansen's approximations and are given as 0 or 2e-16 here; ours are other approximations of the same law.
        ReferenceData.AssertClose(expected.GetProperty("supF_p").GetDouble(), fit.LargestF.PValue, 0, 1e-3);
        ReferenceData.AssertClose(expected.GetProperty("aveF_p").GetDouble(), fit.AverageF.PValue, 0, 1e-3);
        ReferenceData.AssertClose(expected.GetProperty("ols_cusum_p").GetDouble(), fit.CumulativeSum.PValue, 1e-8);
    }

    [Fact]
    public void A_series_without_a_shift_is_rarely_called_unstable()
    {
        // 150 series of 60 normal numbers: a share of 0.05 has a standard error of 0.018. The laws are those of long series: three errors and a margin of 0.02.
        const int Runs = 150;
        var random = new SeededRandom(42);
        int largest = 0, average = 0, cusum = 0;
        for (var run = 0; run < Runs; run++)
        {
            var fit = MeanStability.Test([.. Enumerable.Range(0, 60).Select(_ => random.NextNormal())]).GetOrThrow();
            if (fit.LargestF.PValue < 0.05) largest++;
            if (fit.AverageF.PValue < 0.05) average++;
            if (fit.CumulativeSum.PValue < 0.05) cusum++;
        }

        Assert.InRange(largest / (double)Runs, 0.001, 0.124);
        Assert.InRange(average / (double)Runs, 0.001, 0.124);

        // The cumulative sum is known to be conservative in short series.
        Assert.InRange(cusum / (double)Runs, 0.001, 0.104);
    }

    [Fact]
    public void A_clear_shift_is_found_where_it_is()
    {
        // By hand: 60, 61, 60, 61 then 70, 71, 70, 71: sums of squares 1 + 1 about means 60.5 and 70.5.
        var fit = MeanShifts.Find([60, 61, 60, 61, 70, 71, 70, 71]).GetOrThrow();
        Assert.Equal(4, fit.Models[1].Breaks.Single().After);
        ReferenceData.AssertClose(2, fit.Models[1].ResidualSumOfSquares, 1e-12);
        Assert.Equal([60.5, 70.5], fit.Models[1].Means);
    }

    [Fact]
    public void Breaks_that_could_be_anywhere_have_the_series_as_limits()
    {
        // Means of 2.5e-9 and 3.5e-9 about scatter of 1: the place is unknown, and its limits end where the series does.
        double[] values = [1, -1, 1, -1, 1e-8, 1, -1, 1, -1, 1.4e-8];
        Assert.All(MeanShifts.Find(values).GetOrThrow().Models.SelectMany(model => model.Breaks), place => Assert.True(1 <= place.Earliest && place.Earliest <= place.After && place.After <= place.Latest && place.Latest <= values.Length));
    }

    [Fact]
    public void A_cut_is_what_its_breaks_and_means_say() =>
        Gen.Double[-10, 10].Array[10, 40].Sample(
            values =>
            {
                var fit = MeanShifts.Find(values).GetOrThrow();
                foreach (var model in fit.Models)
                {
                    int[] edges = [0, .. model.Breaks.Select(place => place.After), values.Length];
                    var rss = 0.0;
                    for (var s = 0; s < model.Means.Count; s++)
                    {
                        Assert.True(edges[s + 1] - edges[s] >= fit.SmallestSegment);
                        rss += values[edges[s]..edges[s + 1]].Sum(value => (value - model.Means[s]) * (value - model.Means[s]));
                    }

                    ReferenceData.AssertClose(rss, model.ResidualSumOfSquares, 1e-9, 1e-12);
                }
            },
            iter: 50);

    [Fact]
    public void One_break_is_the_best_of_all_places() =>
        Gen.Double[-10, 10].Array[10, 30].Sample(
            values =>
            {
                var fit = MeanShifts.Find(values).GetOrThrow();
                var sums = MeanShifts.OneBreakSumsOfSquares(values);
                var best = Enumerable.Range(fit.SmallestSegment, values.Length - 2 * fit.SmallestSegment + 1).Min(after => sums[after - 1]);
                ReferenceData.AssertClose(best, fit.Models[1].ResidualSumOfSquares, 1e-9);
            },
            iter: 100);

    [Fact]
    public void A_shift_of_all_values_leaves_the_breaks() =>
        Gen.Select(Gen.Double[-10, 10].Array[10, 30], Gen.Double[-1e6, 1e6]).Sample(
            (values, shift) =>
            {
                var before = MeanShifts.Find(values).GetOrThrow();
                var after = MeanShifts.Find([.. values.Select(value => value + shift)]).GetOrThrow();
                ReferenceData.AssertClose(before.Models[1].ResidualSumOfSquares, after.Models[1].ResidualSumOfSquares, 1e-5, 1e-6);
            },
            iter: 100);

    [Fact]
    public void A_short_series_is_refused() =>
        Assert.Equal("Not enough data for the breaks of the mean: needs 4 observations, has 3 observations.", MeanShifts.Find([1, 2, 3]).ToString());

    [Fact]
    public void Equal_values_are_refused()
    {
        Assert.Equal(Refusal.ZeroVariance, MeanShifts.Find([1, 1, 1, 1, 1]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, MeanStability.Test([1, 1, 1, 1, 1, 1, 1, 1, 1, 1]).Refusal!.Reason);
    }

    [Fact]
    public void Tests_of_stability_need_ten_observations() => Assert.Equal(Refusal.TooFewObservations, MeanStability.Test([1, 2, 3, 4, 5, 6, 7, 8, 9]).Refusal!.Reason);
}
