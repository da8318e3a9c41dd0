using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Resampling;

/// <summary>Jackknife and bootstrap against R 4.2.2, boot 1.3-28.1 with 100,000 resamples (calls in tests/Reference/bootstrap).</summary>
public sealed class BootstrapTests
{
    private const int Resamples = 20_000;

    public static TheoryData<string> Items => ["law_school", "aircondit_mean", "wright_cv"];

    [Theory]
    [MemberData(nameof(Items))]
    public void Jackknife_agrees_with_its_definition_in_R(string item)
    {
        var expected = ReferenceData.Values("bootstrap", item, "exact_parts");
        var (rows, statistic) = Case(item);
        var jackknife = Jackknife.OfRows(rows, statistic).GetOrThrow();
        ReferenceData.AssertClose(expected.GetProperty("estimate").GetDouble(), jackknife.Statistic, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("jackknife_se").GetDouble(), jackknife.StandardError, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("acceleration").GetDouble(), jackknife.Acceleration, 1e-9);

        // The bias is a difference of nearly equal numbers times n - 1.
        ReferenceData.AssertClose(expected.GetProperty("jackknife_bias").GetDouble(), jackknife.Bias, 1e-9, 1e-11 * Math.Abs(jackknife.Statistic));
        var leftOut = expected.GetProperty("jackknife").EnumerateArray().Select(entry => entry.GetDouble()).ToArray();
        Assert.Equal(leftOut.Length, jackknife.LeftOut.Count);
        for (var i = 0; i < leftOut.Length; i++) ReferenceData.AssertClose(leftOut[i], jackknife.LeftOut[i], 1e-9);
    }

    [Theory]
    [MemberData(nameof(Items))]
    public void Bootstrap_agrees_with_boot_within_the_error_of_simulation(string item)
    {
        var expected = ReferenceData.Values("bootstrap", item, "bootstrap");
        var (rows, statistic) = Case(item);
        var options = new BootstrapOptions { Resamples = Resamples, ConfidenceLevel = ConfidenceLevel.NinetyFive };
        var result = Bootstrap.OfRows(rows, statistic, seed: 20260101, options).GetOrThrow();

        // The rule of the reference file: five standard errors of the difference of two simulations.
        var factor = 5 * Math.Sqrt(1 + 100_000.0 / Resamples);
        var errors = expected.GetProperty("monte_carlo_se");
        double Error(string name) => factor * errors.GetProperty(name).GetDouble();
        void AssertLimits(string name, Interval limits, string? errorName)
        {
            var pair = expected.GetProperty(name);
            ReferenceData.AssertClose(pair[0].GetDouble(), limits.Lower, 0, errorName is null ? Error("se") * 3 : Error(errorName + "_lower"), name + " lower");
            ReferenceData.AssertClose(pair[1].GetDouble(), limits.Upper, 0, errorName is null ? Error("se") * 3 : Error(errorName + "_upper"), name + " upper");
        }

        var se = expected.GetProperty("se").GetDouble();
        ReferenceData.AssertClose(se, result.StandardError, 0, Error("se"), "se");
        ReferenceData.AssertClose(expected.GetProperty("bias").GetDouble(), result.Bias, 0, factor * se / Math.Sqrt(100_000), "bias");
        AssertLimits("percentile", result.Percentile, "percentile");
        AssertLimits("bca", result.BiasCorrectedAccelerated!.Value, "bca");

        // The normal limits move with 1.96 times the standard error and with the bias: under three errors of the standard error.
        AssertLimits("normal", result.Normal, null);

        // The basic limits are the percentile limits mirrored: the errors change sides.
        ReferenceData.AssertClose(expected.GetProperty("basic")[0].GetDouble(), result.Basic.Lower, 0, Error("percentile_upper"), "basic lower");
        ReferenceData.AssertClose(expected.GetProperty("basic")[1].GetDouble(), result.Basic.Upper, 0, Error("percentile_lower"), "basic upper");

        // z0 is a quantile of a binomial share; its standard error is √(p(1-p)/R)/φ(z0).
        var z0 = expected.GetProperty("z0").GetDouble();
        var share = NormalDistribution.Cdf(z0);
        var z0Error = factor * Math.Sqrt(share * (1 - share) / 100_000) / NormalDistribution.Density(z0);
        ReferenceData.AssertClose(z0, result.BiasCorrection!.Value, 0, z0Error, "z0");
        var levels = expected.GetProperty("bca_levels");
        for (var side = 0; side < 2; side++)
        {
            // A level moves by φ at its own quantile times (at most) 2.5 times the move of z0, for accelerations below 0.1.
            var level = levels[side].GetDouble();
            var allowed = 2.5 * z0Error * NormalDistribution.Density(NormalDistribution.Quantile(level));
            ReferenceData.AssertClose(level, result.AcceleratedLevels[side], 0, allowed, "level");
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_result_and_another_seed_another()
    {
        double[] values = [62.4, 63.1, 64.0, 69.2, 70.3, 61.8, 62.9, 63.2, 67.5, 69.8, 63.0];
        var first = Bootstrap.Of(values, Descriptive.StandardDeviation, 7).GetOrThrow();
        var second = Bootstrap.Of(values, Descriptive.StandardDeviation, 7).GetOrThrow();
        var third = Bootstrap.Of(values, Descriptive.StandardDeviation, 8).GetOrThrow();
        Assert.Equal(first.Percentile, second.Percentile);
        Assert.Equal(first.BiasCorrectedAccelerated, second.BiasCorrectedAccelerated);
        Assert.NotEqual(first.StandardError, third.StandardError);
    }

    [Fact]
    public void Values_and_rows_are_drawn_alike()
    {
        double[] values = [62.4, 63.1, 64.0, 69.2, 70.3, 61.8, 62.9];
        var direct = Bootstrap.Of(values, Descriptive.Mean, 3).GetOrThrow();
        var byRow = Bootstrap.OfRows(values.Length, rows => Descriptive.Mean([.. rows.Select(row => values[row])]), 3).GetOrThrow();
        Assert.Equal(direct.Percentile, byRow.Percentile);
        Assert.Equal(direct.Acceleration, byRow.Acceleration);
    }

    [Fact]
    public void Clusters_of_one_row_are_rows()
    {
        double[] values = [62.4, 63.1, 64.0, 69.2, 70.3, 61.8, 62.9];
        double Mean(IReadOnlyList<int> rows) => Descriptive.Mean([.. rows.Select(row => values[row])]);
        var rows = Bootstrap.OfRows(values.Length, Mean, 3).GetOrThrow();
        var clusters = Bootstrap.OfClusters([.. values.Select((_, k) => $"A{k}")], Mean, 3).GetOrThrow();
        Assert.Equal(rows.StandardError, clusters.StandardError);
    }

    [Fact]
    public void Drawing_athletes_keeps_what_drawing_sessions_would_hide()
    {
        // By hand: athletes differ, sessions of an athlete do not, so the mean rests on 6 numbers, not on 30:
        // its standard error is the SD of the athletes (n, not n - 1) over √6.
        double[] athletes = [60, 62, 64, 66, 68, 70];
        var labels = athletes.SelectMany((_, k) => Enumerable.Repeat($"A{k}", 5)).ToArray();
        var values = athletes.SelectMany(level => Enumerable.Repeat(level, 5)).ToArray();
        double Mean(IReadOnlyList<int> rows) => Descriptive.Mean([.. rows.Select(row => values[row])]);
        var clusters = Bootstrap.OfClusters(labels, Mean, 11, new BootstrapOptions { Resamples = 20_000 }).GetOrThrow();
        var populationSd = Descriptive.StandardDeviation(athletes) * Math.Sqrt(5 / 6.0);

        // The standard deviation of 20,000 resamples is known to about 1/√40,000 = 0.5 %; five of these.
        ReferenceData.AssertClose(populationSd / Math.Sqrt(6), clusters.StandardError, 0.025);
    }

    [Fact]
    public void Too_few_values_are_refused() =>
        Assert.Equal("Not enough data for the bootstrap interval: needs 3 observations, has 2 observations.", Bootstrap.Of([1, 2], Descriptive.Mean, 1).ToString());

    [Fact]
    public void Values_that_do_not_vary_are_refused() =>
        Assert.Equal(Refusal.ZeroVariance, Bootstrap.Of([3, 3, 3, 3], Descriptive.Mean, 1).Refusal!.Reason);

    [Fact]
    public void A_statistic_that_often_has_no_value_is_refused()
    {
        // With three rows, one resample in nine draws a single row three times, where a correlation has no value.
        double[] x = [1, 2, 4], y = [2, 1, 5];
        double Correlation(IReadOnlyList<int> rows)
        {
            double[] a = [.. rows.Select(row => x[row])], b = [.. rows.Select(row => y[row])];
            return rows.Distinct().Count() < 2 ? double.NaN : Descriptive.Covariance(a, b) / (Descriptive.StandardDeviation(a) * Descriptive.StandardDeviation(b));
        }

        Assert.Equal(Refusal.WeaklyIdentified, Bootstrap.OfRows(3, Correlation, 1).Refusal!.Reason);
    }

    [Fact]
    public void Few_resamples_are_a_caller_mistake() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BootstrapOptions { Resamples = 999 });

    [Fact]
    public void Limits_follow_a_shift_and_a_scale_of_the_values() =>
        Gen.Select(Gen.Double[-50, 50].Array[6, 12], Gen.Double[-100, 100], Gen.Double[0.1, 10]).Where(sample => sample.Item1.Select(value => Math.Round(value, 6)).Distinct().Count() > 3).Sample(
            (values, shift, scale) =>
            {
                var options = new BootstrapOptions { Resamples = 1_000 };
                var before = Bootstrap.Of(values, Descriptive.Mean, 5, options).GetOrThrow();
                var after = Bootstrap.Of([.. values.Select(value => shift + scale * value)], Descriptive.Mean, 5, options).GetOrThrow();
                ReferenceData.AssertClose(shift + scale * before.Percentile.Lower, after.Percentile.Lower, 1e-9, 1e-9);
                ReferenceData.AssertClose(scale * before.StandardError, after.StandardError, 1e-9, 1e-9);
            },
            iter: 20);

    private static (int Rows, Func<IReadOnlyList<int>, double> Statistic) Case(string item)
    {
        double[] Column(string name) => ReferenceData.Column("bootstrap", item + ".csv", name);
        double[] At(double[] column, IReadOnlyList<int> rows) => [.. rows.Select(row => column[row])];
        switch (item)
        {
            case "law_school":
                double[] lsat = Column("lsat"), gpa = Column("gpa");
                return (lsat.Length, rows => Descriptive.Covariance(At(lsat, rows), At(gpa, rows)) / (Descriptive.StandardDeviation(At(lsat, rows)) * Descriptive.StandardDeviation(At(gpa, rows))));
            case "aircondit_mean":
                var hours = Column("v");
                return (hours.Length, rows => Descriptive.Mean(At(hours, rows)));
            default:
                var flows = Column("v");
                return (flows.Length, rows => 100 * Descriptive.StandardDeviation(At(flows, rows)) / Descriptive.Mean(At(flows, rows)));
        }
    }
}
