using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class NoncentralAndRangeTests
{
    // mpmath 1.2.1: 30-digit quadrature of E[Φ(x s - δ)], cdf and upper tail each on their own.
    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    public void The_noncentral_t_distribution_matches_30_digit_quadrature(string column) =>
        ReferenceRows.AssertColumn("distributions", "noncentral_t_high_precision", "noncentral_t", column, row => Noncentral(row, column));

    // R 4.2.2: pt(x, df, ncp), whose series stops at about 1e-12.
    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    public void The_noncentral_t_distribution_matches_R(string column) => ReferenceRows.AssertColumn("distributions", "distributions", "noncentral_t", column, row => Noncentral(row, column));

    // mpmath 1.2.1, 40 digits: quad over s of 2 (df/2)^(df/2)/gamma(df/2) s^(df - 1) exp(-df s^2/2) erfc((ncp - x s)/sqrt(2))/2; R loses
    // both. The last line is Cauchy's tail 1/(π x).
    [Fact]
    public void Far_tails_and_large_noncentralities_keep_their_digits()
    {
        ReferenceData.AssertClose(0.439178406886743825721, NoncentralTDistribution.Cdf(40, 3, 38), 1e-11);
        ReferenceData.AssertClose(8.796887198217828e-119, NoncentralTDistribution.Cdf(1, 1.5, 30), 1e-10);
        ReferenceData.AssertClose(0.691462454672788372, NoncentralTDistribution.Cdf(3, 1e8, 2.5), 1e-11);
        ReferenceData.AssertClose(1 / (Math.PI * 1e15), NoncentralTDistribution.UpperTail(1e15, 1, 0), 1e-10);
    }

    // R 4.2.2: qt(p, df, ncp), whose probabilities stop at about 1e-12.
    [Theory]
    [InlineData(0.025, 7, 5.5437171645025325, 3.08676880971712)]
    [InlineData(0.95, 11, 6.789639165669999, 11.0877939358995)]
    [InlineData(0.5, 3, 0, 0)]
    [InlineData(0.01, 5, -2.5, -9.1129407133199)]
    [InlineData(0.99, 30, 8, 12.3535171564873)]
    public void Quantiles_of_the_noncentral_t_distribution_match_R(double p, double df, double ncp, double expected) =>
        Assert.Equal(expected, NoncentralTDistribution.Quantile(p, df, ncp), 1e-9);

    [Fact]
    public void A_quantile_of_a_large_noncentrality_has_its_probability() => Assert.Equal(0.95, NoncentralTDistribution.Cdf(NoncentralTDistribution.Quantile(0.95, 19_999, 277), 19_999, 277), 1e-10);

    [Fact]
    public void Without_noncentrality_it_is_the_t_distribution() =>
        Gen.Select(Gen.Double[-8, 8], Gen.Double[1, 300]).Sample((x, df) =>
            ReferenceData.AssertClose(StudentTDistribution.Cdf(x, df), NoncentralTDistribution.Cdf(x, df, 0), 1e-10), iter: 100);

    [Fact]
    public void A_noncentrality_limit_puts_the_observed_t_at_its_probability() =>
        Gen.Select(Gen.Double[-10, 10], Gen.Double[2, 100], Gen.Double[0.01, 0.99]).Sample((t, df, p) =>
            Assert.Equal(p, NoncentralTDistribution.Cdf(t, df, NoncentralTDistribution.Noncentrality(t, df, p)), 1e-10), iter: 50);

    // R 4.2.2: ptukey(q, k, df, lower.tail = FALSE), which is off by up to 7.3e-5 itself; the exact values are those of the next test.
    [Fact]
    public void The_studentised_range_matches_R_as_far_as_R_is_exact() =>
        ReferenceRows.AssertColumn("distributions", "distributions", "tukey", "upper", 1e-4, 1e-10, Range);

    // R 4.2.2: nested integrate() of the definition, studentized_range_integrated.json.
    [Fact]
    public void The_studentised_range_matches_the_integrated_definition() =>
        ReferenceRows.AssertColumn("distributions", "studentized_range_integrated", "tukey", "upper", Range);

    // The range of two means is √2 |t|: an identity.
    [Fact]
    public void The_range_of_two_means_is_a_t_test() =>
        Gen.Select(Gen.Double[0.1, 12], Gen.Double[1, 200]).Sample((q, df) =>
            ReferenceData.AssertClose(StudentTDistribution.TwoSidedPValue(q / Math.Sqrt(2), df), StudentizedRangeDistribution.UpperTail(q, 2, df), 1e-9), iter: 50);

    [Fact]
    public void The_quantile_of_the_range_is_its_inverse()
    {
        foreach (var (groups, df) in new[] { (3, 4.0), (6, 66.0), (12, 20.0) })
            Assert.Equal(0.05, StudentizedRangeDistribution.UpperTail(StudentizedRangeDistribution.UpperQuantile(0.05, groups, df), groups, df), 1e-9);
    }

    // R 4.2.2: psignrank(v, n).
    [Fact]
    public void The_signed_rank_distribution_matches_R() => ReferenceRows.AssertColumn(
        "distributions", "distributions", "signed_rank", "cdf", row => SignedRankDistribution.Cdf(row.GetProperty("v").GetInt32(), row.GetProperty("n").GetInt32()));

    // R 4.2.2: qsignrank(c(.025, .05, .5), c(9, 7, 20)).
    [Theory]
    [InlineData(0.025, 9, 6)]
    [InlineData(0.05, 7, 4)]
    [InlineData(0.5, 20, 105)]
    public void The_signed_rank_quantile_matches_R(double probability, int n, int expected) => Assert.Equal(expected, SignedRankDistribution.Quantile(probability, n));

    // R 4.2.2: dbinom(33, 60, .2), pbinom(5, 20, .4), pbinom(32, 60, .2, lower.tail = FALSE).
    [Fact]
    public void The_binomial_distribution_matches_R()
    {
        ReferenceData.AssertClose(1.8277882333290235e-09, BinomialDistribution.Probability(33, 60, 0.2), 1e-12);
        ReferenceData.AssertClose(0.12559897272303752, BinomialDistribution.Cdf(5, 20, 0.4), 1e-12);
        ReferenceData.AssertClose(2.2719785722505093e-09, BinomialDistribution.AtLeast(33, 60, 0.2), 1e-12);
    }

    [Fact]
    public void Arguments_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralTDistribution.Cdf(1, 0.5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRangeDistribution.UpperTail(1, 1, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRangeDistribution.UpperTail(-1, 2, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => SignedRankDistribution.Cdf(1, 0));
    }

    private static double Noncentral(ReferenceValue row, string column) => column == "cdf"
        ? NoncentralTDistribution.Cdf(row.Number("x"), row.Number("df"), row.Number("ncp"))
        : NoncentralTDistribution.UpperTail(row.Number("x"), row.Number("df"), row.Number("ncp"));

    private static double Range(ReferenceValue row) => StudentizedRangeDistribution.UpperTail(row.Number("q"), row.GetProperty("k").GetInt32(), row.Number("df"));
}
