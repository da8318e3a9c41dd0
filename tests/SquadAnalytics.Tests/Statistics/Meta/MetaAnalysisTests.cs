using System.Text.Json;
using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Meta;

/// <summary>Meta-analysis against R 4.2.2, metafor 3.8-1 (calls and tolerances in tests/Reference/meta).</summary>
public sealed class MetaAnalysisTests
{
    private static readonly string[] Items = ["bcg", "generated_changes"];

    public static TheoryData<string, string, BetweenVarianceEstimator, bool, double> Fits
    {
        get
        {
            var fits = new TheoryData<string, string, BetweenVarianceEstimator, bool, double>();
            foreach (var item in Items)
            {
                fits.Add(item, "reml", BetweenVarianceEstimator.Reml, false, 1e-6);
                fits.Add(item, "reml_knapp_hartung", BetweenVarianceEstimator.Reml, true, 1e-6);
                fits.Add(item, "dersimonian_laird", BetweenVarianceEstimator.DerSimonianLaird, false, 1e-8);
                fits.Add(item, "paule_mandel", BetweenVarianceEstimator.PauleMandel, false, 1e-5);
                fits.Add(item, "ml", BetweenVarianceEstimator.MaximumLikelihood, false, 1e-6);
                fits.Add(item, "equal_effects", BetweenVarianceEstimator.EqualEffects, false, 1e-8);
            }

            return fits;
        }
    }

    public static TheoryData<string> Data => [.. Items];

    [Theory]
    [MemberData(nameof(Fits))]
    public void Fit_agrees_with_metafor(string item, string block, BetweenVarianceEstimator estimator, bool knappHartung, double tolerance)
    {
        var expected = ReferenceData.Values("meta", item, block);
        var fit = Fit(item, estimator, knappHartung);
        void AssertValue(string name, double got) => ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), got, tolerance, 0, name);
        AssertValue("estimate", fit.Mean.Value);
        AssertValue("se", fit.Mean.StandardError!.Value);
        AssertValue("z_or_t", fit.Mean.Value / fit.Mean.StandardError.Value);
        AssertValue("lower95", fit.Mean.Lower!.Value);
        AssertValue("upper95", fit.Mean.Upper!.Value);
        AssertValue("tau2", fit.BetweenVariance.Value);
        AssertValue("i2", fit.ISquared.Value);
        AssertValue("h2", fit.HSquared.Value);
        AssertValue("q", fit.Q);
        AssertValue("q_p", fit.QPValue);

        // A tail probability magnifies the tolerance of its z.
        ReferenceData.AssertClose(Math.Log(expected.GetProperty("p").GetDouble()), Math.Log(fit.Mean.PValue!.Value), tolerance * 10, 0, "ln p");
        if (expected.GetProperty("se_tau2").ValueKind == JsonValueKind.Null) Assert.Null(fit.BetweenVariance.StandardError);
        else AssertValue("se_tau2", fit.BetweenVariance.StandardError!.Value);
    }

    [Theory]
    [MemberData(nameof(Data))]
    public void Shrunken_effects_agree_with_metafor(string item)
    {
        var fit = Fit(item, BetweenVarianceEstimator.Reml, knappHartung: false);
        foreach (var row in ReferenceData.Values("meta", item, "blup").EnumerateArray())
        {
            var prediction = fit.Effects[row.GetProperty("row").GetInt32() - 1].Prediction;
            ReferenceData.AssertClose(row.GetProperty("pred").GetDouble(), prediction.Value, 1e-5);
            ReferenceData.AssertClose(row.GetProperty("se").GetDouble(), prediction.StandardError!.Value, 1e-5);
            ReferenceData.AssertClose(row.GetProperty("pi_lower95").GetDouble(), prediction.Lower!.Value, 1e-5);
            ReferenceData.AssertClose(row.GetProperty("pi_upper95").GetDouble(), prediction.Upper!.Value, 1e-5);
        }

        // w = tau2/(tau2+vi); w yi + (1-w) mu, from the file.
        foreach (var row in ReferenceData.Values("meta", item, "shrinkage_plain").EnumerateArray())
        {
            var effect = fit.Effects[row.GetProperty("row").GetInt32() - 1];
            ReferenceData.AssertClose(row.GetProperty("weight").GetDouble(), effect.Weight, 1e-5);
            ReferenceData.AssertClose(row.GetProperty("shrunk").GetDouble(), effect.Prediction.Value, 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(Data))]
    public void Prediction_limits_agree_with_metafor(string item)
    {
        var expected = ReferenceData.Values("meta", item, "prediction");
        var fit = Fit(item, BetweenVarianceEstimator.Reml, knappHartung: false);
        ReferenceData.AssertClose(expected.GetProperty("pred").GetDouble(), fit.Mean.Value, 1e-5);
        ReferenceData.AssertClose(expected.GetProperty("se").GetDouble(), fit.Mean.StandardError!.Value, 1e-5);
        ReferenceData.AssertClose(expected.GetProperty("pi_lower95").GetDouble(), fit.PredictionInterval.Lower, 1e-5);
        ReferenceData.AssertClose(expected.GetProperty("pi_upper95").GetDouble(), fit.PredictionInterval.Upper, 1e-5);
    }

    [Theory]
    [MemberData(nameof(Data))]
    public void Limits_of_the_spread_agree_with_metafor(string item)
    {
        var fit = Fit(item, BetweenVarianceEstimator.Reml, knappHartung: false);
        var byName = new Dictionary<string, Estimate> { ["tau^2"] = fit.BetweenVariance, ["tau"] = fit.BetweenStandardDeviation, ["I^2(%)"] = fit.ISquared, ["H^2"] = fit.HSquared };
        foreach (var row in ReferenceData.Values("meta", item, "q_profile").EnumerateArray())
        {
            var estimate = byName[row.GetProperty("name").GetString()!];
            ReferenceData.AssertClose(row.GetProperty("estimate").GetDouble(), estimate.Value, 1e-5);
            ReferenceData.AssertClose(row.GetProperty("ci.lb").GetDouble(), estimate.Lower!.Value, 1e-3);
            ReferenceData.AssertClose(row.GetProperty("ci.ub").GetDouble(), estimate.Upper!.Value, 1e-3);
        }
    }

    [Fact]
    public void Equal_error_variances_give_the_plain_mean_and_its_t_interval()
    {
        // By hand: 1, 2, 3, 6 with equal variances: mean 3, SD √(14/3); Knapp-Hartung is then the one-sample t, SE √(14/3)/2, df 3; τ² = 14/3 - 0.5.
        double[] values = [1, 2, 3, 6];
        var fit = MetaAnalysis.Fit([.. values.Select((value, k) => new MeasuredEffect($"A{k}", value, 0.5))]).GetOrThrow();
        ReferenceData.AssertClose(3, fit.Mean.Value, 1e-12);
        ReferenceData.AssertClose(Math.Sqrt(14 / 3.0) / 2, fit.Mean.StandardError!.Value, 1e-10);
        Assert.Equal(3, fit.Mean.DegreesOfFreedom);
        ReferenceData.AssertClose(14 / 3.0 - 0.5, fit.BetweenVariance.Value, 1e-10);
    }

    [Theory]
    [InlineData(BetweenVarianceEstimator.Reml)]
    [InlineData(BetweenVarianceEstimator.MaximumLikelihood)]
    [InlineData(BetweenVarianceEstimator.DerSimonianLaird)]
    [InlineData(BetweenVarianceEstimator.PauleMandel)]
    public void Effects_that_agree_better_than_their_errors_have_no_spread_and_say_so(BetweenVarianceEstimator estimator)
    {
        double[] values = [1.0, 1.1, 0.9, 1.05, 0.95];
        var fit = MetaAnalysis.Fit([.. values.Select((value, k) => new MeasuredEffect($"A{k}", value, 1))], new MetaAnalysisOptions { Estimator = estimator }).GetOrThrow();
        Assert.Equal(0, fit.BetweenVariance.Value);
        Assert.Equal(0, fit.BetweenVariance.Lower);
        Assert.Contains(fit.Notes, note => note.Contains("no evidence that they differ", StringComparison.Ordinal));
        Assert.All(fit.Effects, effect => Assert.Equal(fit.Mean.Value, effect.Prediction.Value, 1e-12));
    }

    [Fact]
    public void One_effect_is_refused() =>
        Assert.Equal("Not enough data for the weighted mean effect: needs 2 effects, has 1 effects.", MetaAnalysis.Fit([new MeasuredEffect("A", 1, 1)]).ToString());

    [Fact]
    public void Equal_effects_are_refused_where_the_interval_rests_on_their_spread() =>
        Assert.Equal(Refusal.ZeroVariance, MetaAnalysis.Fit([new MeasuredEffect("A", 1, 1), new MeasuredEffect("B", 1, 2)]).Refusal!.Reason);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_variance_must_be_above_zero(double variance) => Assert.Throws<ArgumentOutOfRangeException>(() => new MeasuredEffect("A", 1, variance));

    [Fact]
    public void Shift_scale_and_order_change_only_what_they_must() =>
        Gen.Select(Gen.Select(Gen.Double[-5, 5], Gen.Double[0.1, 3]).Array[3, 12], Gen.Double[-1000, 1000], Gen.Double[0.1, 10]).Where(sample => sample.Item1.Max(pair => pair.Item1) - sample.Item1.Min(pair => pair.Item1) > 0.01).Sample(
            (pairs, shift, scale) =>
            {
                var before = MetaAnalysis.Fit([.. pairs.Select((pair, k) => new MeasuredEffect($"A{k}", pair.Item1, pair.Item2))]).GetOrThrow();
                var after = MetaAnalysis.Fit([.. pairs.Reverse().Select((pair, k) => new MeasuredEffect($"A{k}", shift + scale * pair.Item1, scale * scale * pair.Item2))]).GetOrThrow();
                ReferenceData.AssertClose(shift + scale * before.Mean.Value, after.Mean.Value, 1e-7, 1e-6 * scale);
                ReferenceData.AssertClose(scale * before.Mean.StandardError!.Value, after.Mean.StandardError!.Value, 1e-6);
                ReferenceData.AssertClose(scale * scale * before.BetweenVariance.Value, after.BetweenVariance.Value, 1e-6, 1e-6 * scale * scale);
            },
            iter: 200);

    private static MetaAnalysisFit Fit(string item, BetweenVarianceEstimator estimator, bool knappHartung)
    {
        double[] y = ReferenceData.Column("meta", item + ".csv", "yi"), v = ReferenceData.Column("meta", item + ".csv", "vi");
        var options = new MetaAnalysisOptions { Estimator = estimator, KnappHartung = knappHartung, ConfidenceLevel = ConfidenceLevel.NinetyFive };
        return MetaAnalysis.Fit([.. y.Zip(v, (effect, variance) => new MeasuredEffect("x", effect, variance))], options).GetOrThrow();
    }
}
