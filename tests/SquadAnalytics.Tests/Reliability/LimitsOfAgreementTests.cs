using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Reliability;

public sealed class LimitsOfAgreementTests
{
    [Fact]
    public void The_limits_of_two_tests_match_R()
    {
        // R 4.2.2: d <- test2 - test1; mean(d) + c(-1.96, 1.96) * sd(d); mean(d) + c(-1, 1) * qt(.975, 7) * sd(d) * sqrt(1 + 1/8).
        IReadOnlyList<Session> firstTwo = [.. WorkedData.EightAthletes.Where(session => session.Id.EndsWith("w0", StringComparison.Ordinal) || session.Id.EndsWith("w1", StringComparison.Ordinal))];
        var limits = LimitsOfAgreement.Fit(firstTwo, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(-10.871020, limits.Lower.Value, 5e-7);
        Assert.Equal(6.671020, limits.Upper.Value, 5e-7);
        Assert.Equal(-13.323606, limits.SmallSample.Lower, 5e-7);
        Assert.Equal(9.123606, limits.SmallSample.Upper, 5e-7);
    }

    [Theory]
    [InlineData("weir_a")]
    [InlineData("peakflow_wright")]
    [InlineData("peakflow_methods")]
    public void The_limits_of_published_pairs_match_R(string item)
    {
        double[] first, second;
        if (item == "peakflow_methods")
        {
            first = ReferenceData.Column("reliability", "peakflow_methods.csv", "mini");
            second = ReferenceData.Column("reliability", "peakflow_methods.csv", "wright");
        }
        else
        {
            var table = ReferenceTable.Load(item);
            first = [.. table.Select(row => row[0])];
            second = [.. table.Select(row => row[1])];
        }

        var expected = ReferenceData.Values("reliability", item, "limits_of_agreement");
        var limits = LimitsOfAgreement.FitPairs(first, second, ConfidenceLevel.NinetyFive).GetOrThrow();
        void Same(string name, double got) => ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), got, 1e-9, what: $"{item} {name}");
        Same("bias", limits.Bias.Value);
        Same("sd", limits.Deviation.Value);
        Same("se_bias", limits.Bias.StandardError!.Value);
        Same("lower", limits.Lower.Value);
        Same("upper", limits.Upper.Value);
        Same("se_limit_1986", limits.Lower.StandardError!.Value);
        // The published intervals are those of the standard error; ours are exact.
        foreach (var (name, limit) in new[] { ("lower_ci_1986", limits.Lower), ("upper_ci_1986", limits.Upper) })
        {
            var reach = StudentTDistribution.TwoSidedFactor(ConfidenceLevel.NinetyFive, limit.DegreesOfFreedom!.Value) * limit.StandardError!.Value;
            ReferenceData.AssertClose(expected.GetProperty(name)[0].GetDouble(), limit.Value - reach, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty(name)[1].GetDouble(), limit.Value + reach, 1e-9);
        }
    }

    [Fact]
    public void The_interval_of_a_limit_is_exact()
    {
        // R 4.2.2: d <- c(-1.5, 0.5, 2, -0.5, 3, 1, -2, 1.5); n <- 8; mean(d) + sd(d) * qt(c(.05, .95), n - 1, 1.96 * sqrt(n)) / sqrt(n); mean(d) - the same.
        double[] second = [-1.5, 0.5, 2, -0.5, 3, 1, -2, 1.5];
        var limits = LimitsOfAgreement.FitPairs(new double[8], second, ConfidenceLevel.Ninety).GetOrThrow();
        (double, double)[] expected = [(2.59479864867699, 6.94824464049425), (-5.94824464049425, -1.59479864867699)];
        foreach (var ((from, to), limit) in expected.Zip([limits.Upper, limits.Lower]))
        {
            Assert.Equal(from, limit.Lower!.Value, 1e-9);
            Assert.Equal(to, limit.Upper!.Value, 1e-9);
        }
    }

    [Fact]
    public void Scatter_that_grows_with_the_level_is_seen()
    {
        // By construction: differences of ±10 % of the level.
        double[] first = [100, 200, 300, 400, 500, 600, 700, 800, 900, 1000];
        double[] second = [.. first.Select((value, i) => value * (i % 2 == 0 ? 1.1 : 1 / 1.1))];
        var limits = LimitsOfAgreement.FitPairs(first, second).GetOrThrow();
        Assert.True(limits.Growth.GetOrThrow().Lower > 0);
        // Hand arithmetic: log differences ±ln 1.1, SD ln 1.1 √(10/9); limits 100 (exp(±1.96 · 0.100466) - 1).
        Assert.Equal(100 * (Math.Exp(1.96 * Math.Log(1.1) * Math.Sqrt(10.0 / 9)) - 1), limits.Ratio.GetOrThrow().Upper, 1e-9);
    }

    [Fact]
    public void Seven_pairs_or_equal_differences_are_refused()
    {
        Assert.Equal(Refusal.TooFewAthletes, LimitsOfAgreement.FitPairs([1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 6, 8]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, LimitsOfAgreement.FitPairs([1, 2, 3, 4, 5, 6, 7, 8], [2, 3, 4, 5, 6, 7, 8, 9]).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => LimitsOfAgreement.FitPairs([1, 2], [1]));
    }
}
