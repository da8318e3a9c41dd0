using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class RobustLocationTests
{
    // R 4.2.2: mean(v, trim = .1), mean(v, trim = .2); MASS 7.3.58.2: huber(v, k = 1.5), hubers(v, k = 1.5); shapiro.test(v).
    [Theory]
    [InlineData("precip23")]
    [InlineData("small6")]
    public void Trimmed_means_Huber_and_Shapiro_Wilk_match_R(string item)
    {
        var v = ReferenceData.Column("robust", item + ".csv", "v");
        ReferenceRows.AssertValue("robust", item, "location_scale", "trimmed_10", RobustLocation.TrimmedMean(v, 0.1));
        ReferenceRows.AssertValue("robust", item, "location_scale", "trimmed_20", RobustLocation.TrimmedMean(v, 0.2));
        var huber = RobustLocation.Huber(v).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "huber", "mu", huber.Location);
        ReferenceRows.AssertValue("robust", item, "huber", "s", huber.Scale);
        var together = RobustLocation.HuberProposal2(v).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "huber", "hubers_mu", together.Location);
        ReferenceRows.AssertValue("robust", item, "huber", "hubers_s", together.Scale);
        var normality = ShapiroWilk.Fit(v).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "normality", "w", normality.W);
        ReferenceRows.AssertValue("robust", item, "normality", "p", normality.PValue);
    }

    // R 4.2.2: shapiro.test(c(1, 2, 4)); shapiro.test(c(1, 2, 4, 8, 16, 32, 64, 128)); shapiro.test((1:40)^2).
    [Fact]
    public void Shapiro_Wilk_matches_R_for_3_for_8_and_for_40_numbers()
    {
        var sizes = new[] { [1, 2, 4], [.. Enumerable.Range(0, 8).Select(k => Math.Pow(2, k))], Enumerable.Range(1, 40).Select(k => (double)k * k).ToArray() };
        foreach (var (values, (w, p)) in sizes.Zip(new[] { (0.96428571428571419, 0.6368868450289632), (0.75563569492545535, 0.0094266415791575357), (0.89929010872877579, 0.001823048746275986) }))
        {
            var got = ShapiroWilk.Fit(values).GetOrThrow();
            ReferenceData.AssertClose(w, got.W, 1e-6);
            ReferenceData.AssertClose(p, got.PValue, 1e-5);
        }
    }

    [Fact]
    public void One_wild_number_hardly_moves_Hubers_centre()
    {
        double[] seconds = [62.4, 62.9, 63.1, 63.4, 63.8, 64.0];
        var wild = RobustLocation.Huber([.. seconds, 162.4]).GetOrThrow().Location;
        Assert.InRange(wild - Descriptive.Mean(seconds), 0, 0.5);
    }

    [Fact]
    public void Numbers_of_which_most_are_equal_are_refused()
    {
        Assert.Equal(Refusal.ZeroVariance, RobustLocation.Huber([62, 62, 62, 63]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, ShapiroWilk.Fit([62, 62, 62]).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewObservations, ShapiroWilk.Fit([62, 63]).Refusal!.Reason);
    }

    [Fact]
    public void Shifting_and_scaling_moves_the_centre_along() =>
        Gen.Select(Gen.Double[50, 80].Array[5, 20], Gen.Double[-100, 100], Gen.Double[0.1, 5]).Sample((v, shift, scale) =>
        {
            var moved = RobustLocation.Huber([.. v.Select(x => scale * x + shift)]).GetOrThrow().Location;
            Assert.Equal(scale * RobustLocation.Huber(v).GetOrThrow().Location + shift, moved, 1e-8);
            Assert.Equal(scale * RobustLocation.TrimmedMean(v, 0.2) + shift, RobustLocation.TrimmedMean([.. v.Select(x => scale * x + shift)], 0.2), 1e-9);
        }, iter: 100);
}
