using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class DescriptiveTests
{
    // NIST/ITL Statistical Reference Datasets, univariate summary statistics: certified mean, SD (n - 1) and lag-1 autocorrelation.
    // NumAcc3's numbers have no exact double, so no double-precision code gets beyond about nine digits there.
    [Theory]
    [InlineData("Lew", 1e-12)]
    [InlineData("Lottery", 1e-12)]
    [InlineData("Michelso", 1e-12)]
    [InlineData("NumAcc1", 1e-12)]
    [InlineData("NumAcc3", 1e-8)]
    public void Mean_SD_and_lag_1_autocorrelation_match_the_certified_values(string item, double relative)
    {
        var y = ReferenceData.Column("nist", item + ".csv", "y");
        var certified = ReferenceData.Values("nist", item, "certified");
        Assert.Equal(certified.GetProperty("n").GetInt32(), y.Length);
        ReferenceData.AssertClose(certified.Number("mean"), Descriptive.Mean(y), 1e-12, what: "mean");
        ReferenceData.AssertClose(certified.Number("sd"), Descriptive.StandardDeviation(y), relative, what: "sd");
        ReferenceData.AssertClose(certified.Number("autocorrelation_lag1"), Descriptive.Autocorrelation(y)!.Value, relative, what: "autocorrelation");
    }

    // R 4.2.2: quantile(v, p, type = 1..9).
    [Theory]
    [InlineData("precip23")]
    [InlineData("small6")]
    public void The_nine_quantile_rules_match_R(string item)
    {
        var v = ReferenceData.Column("robust", item + ".csv", "v");
        var types = ReferenceData.Values("robust", item, "quantiles");
        foreach (var rule in Enum.GetValues<QuantileRule>())
        {
            foreach (var row in types.GetProperty($"type{(int)rule}").EnumerateArray())
                ReferenceData.AssertClose(row.Number("q"), Descriptive.Quantile(v, row.Number("p"), rule), 1e-12, what: $"{rule} at {row.Number("p")}");
        }
    }

    // R 4.2.2: mean, sd, var, median, mad(v), mad(v, constant = 1), exp(mean(log(v))), moments.
    [Theory]
    [InlineData("precip23")]
    [InlineData("small6")]
    public void Location_and_scale_match_R(string item)
    {
        var v = ReferenceData.Column("robust", item + ".csv", "v");
        void Check(string name, double got) => ReferenceRows.AssertValue("robust", item, "location_scale", name, got);
        Check("n", v.Length);
        Check("mean", Descriptive.Mean(v));
        Check("sd", Descriptive.StandardDeviation(v));
        Check("var", Descriptive.Variance(v));
        Check("cv_percent", 100 * Descriptive.StandardDeviation(v) / Descriptive.Mean(v));
        Check("median", Descriptive.Median(v));
        Check("mad", Descriptive.MedianAbsoluteDeviation(v));
        Check("mad_raw", Descriptive.MedianAbsoluteDeviation(v, scale: 1));
        Check("iqr_type7", Descriptive.Quantile(v, 0.75) - Descriptive.Quantile(v, 0.25));
        Check("geometric_mean", Descriptive.GeometricMean(v));
        var deviationOfLogs = Descriptive.StandardDeviation([.. v.Select(x => Math.Log(x))]);
        Check("geometric_cv_percent", 100 * Math.Sqrt(Math.Exp(deviationOfLogs * deviationOfLogs) - 1));
        Check("skew_g1", Descriptive.Skewness(v)!.Value);
        Check("kurtosis_g2", Descriptive.ExcessKurtosis(v)!.Value);

        // fivenum: the hinges are the medians of the lower and the upper half, each with the middle number.
        double[] sorted = [.. v.Order()];
        var half = (v.Length + 1) / 2;
        double[] five = [Descriptive.Quantile(v, 0), Descriptive.Median(sorted[..half]), Descriptive.Median(v), Descriptive.Median(sorted[^half..]), Descriptive.Quantile(v, 1)];
        var expected = ReferenceData.Values("robust", item, "location_scale").Numbers("fivenum");
        for (var i = 0; i < five.Length; i++) ReferenceData.AssertClose(expected[i], five[i], 1e-12);
    }

    // R 4.2.2: acf(Nile)$acf[2].
    [Fact]
    public void Lag_1_autocorrelation_of_the_Nile_matches_R() => ReferenceRows.AssertValue(
        "monitoring", "nile_control", "lag1", "r1", Descriptive.Autocorrelation(ReferenceData.Column("monitoring", "nile_control.csv", "y"))!.Value);

    // By hand: deviations -0.375, 0, 0.375, so the SD is 0.375. The plain sum-of-squares formula loses every digit at this mean.
    [Fact]
    public void A_large_mean_does_not_cost_the_SD_its_digits()
    {
        double[] seconds = [1e9 + 0.125, 1e9 + 0.5, 1e9 + 0.875];
        Assert.Equal(0.375, Descriptive.StandardDeviation(seconds), 1e-15);
        Assert.Equal(1e9 + 0.5, Descriptive.Mean(seconds));
    }

    [Fact]
    public void A_sum_keeps_what_a_plain_sum_drops() => Assert.Equal(2, Descriptive.Sum([1, 1e100, 1, -1e100]));

    [Fact]
    public void Autocorrelation_of_equal_numbers_does_not_exist() => Assert.Null(Descriptive.Autocorrelation([62, 62, 62]));

    [Fact]
    public void A_number_that_is_not_finite_is_named_in_the_message()
    {
        double[] times = [62.4, double.NaN];
        var problem = Assert.Throws<ArgumentException>(() => Descriptive.Mean(times));
        Assert.Contains("values[1] must be a finite number, but is NaN", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_number_has_no_SD() => Assert.Throws<ArgumentException>(() => Descriptive.StandardDeviation([62.4]));

    [Fact]
    public void Adding_a_constant_leaves_the_SD_and_multiplying_scales_it() =>
        Gen.Select(Gen.Double[-50, 50].Array[2, 30], Gen.Double[-1000, 1000], Gen.Double[0.1, 10]).Sample((v, shift, scale) =>
        {
            var sd = Descriptive.StandardDeviation(v);
            Assert.Equal(sd, Descriptive.StandardDeviation([.. v.Select(x => x + shift)]), 1e-10);
            Assert.Equal(scale * sd, Descriptive.StandardDeviation([.. v.Select(x => scale * x)]), 1e-10);
            Assert.Equal(Descriptive.Median(v) + shift, Descriptive.Median([.. v.Select(x => x + shift)]), 1e-10);
        }, iter: 200);

    [Fact]
    public void Quantiles_rise_with_the_probability_and_stay_within_the_sample() =>
        Gen.Select(Gen.Double[-50, 50].Array[1, 30], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[1, 9]).Sample((v, p, q, rule) =>
        {
            var low = Descriptive.Quantile(v, Math.Min(p, q), (QuantileRule)rule);
            var high = Descriptive.Quantile(v, Math.Max(p, q), (QuantileRule)rule);
            Assert.InRange(low, v.Min(), high);
            Assert.InRange(high, low, v.Max());
        }, iter: 300);
}
