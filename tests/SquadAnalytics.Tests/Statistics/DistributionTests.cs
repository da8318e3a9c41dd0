using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class DistributionTests
{
    // Source of all values of this class: R 4.2.2, stats package (its nmath library); the calls stand in distributions.json beside them,
    // for example pt(x, df, lower.tail = FALSE). Tails below 1e-300 are compared absolutely, as the file says.
    private const string Folder = "distributions";
    private const string Item = "distributions";

    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    [InlineData("log_cdf")]
    [InlineData("pdf")]
    public void The_t_distribution_matches_R_in_both_tails(string column) => ReferenceRows.AssertColumn(Folder, Item, "t", column, row =>
    {
        var (x, df) = (row.Number("x"), row.Number("df"));
        return column switch
        {
            "cdf" => StudentTDistribution.Cdf(x, df),
            "upper" => StudentTDistribution.UpperTail(x, df),
            "log_cdf" => StudentTDistribution.LogCdf(x, df),
            _ => StudentTDistribution.Density(x, df),
        };
    });

    // R's own qt misses by up to 4e-8 at p = 1e-300; the exact values are those of the next test.
    [Fact]
    public void The_t_quantile_matches_R_as_far_as_R_is_exact() =>
        ReferenceRows.AssertColumn(Folder, Item, "t_quantile", "q", 1e-7, 0, row => StudentTDistribution.Quantile(row.Number("p"), row.Number("df")));

    // mpmath 1.2.1, 45 digits: root of the hypergeometric form of the incomplete beta function, quantiles_high_precision.json.
    [Fact]
    public void The_t_quantile_is_exact_down_to_probabilities_of_1e_minus_300() =>
        ReferenceRows.AssertColumn(Folder, "quantiles_high_precision", "t_quantile", "q", row => StudentTDistribution.Quantile(row.Number("p"), row.Number("df")));

    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    [InlineData("log_cdf")]
    [InlineData("pdf")]
    public void The_normal_distribution_matches_R_in_both_tails(string column) => ReferenceRows.AssertColumn(Folder, Item, "normal", column, row => column switch
    {
        "cdf" => NormalDistribution.Cdf(row.Number("x")),
        "upper" => NormalDistribution.UpperTail(row.Number("x")),
        "log_cdf" => NormalDistribution.LogCdf(row.Number("x")),
        _ => NormalDistribution.Density(row.Number("x")),
    });

    [Fact]
    public void The_normal_quantile_matches_R() => ReferenceRows.AssertColumn(Folder, Item, "normal_quantile", "q", row => NormalDistribution.Quantile(row.Number("p")));

    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    public void The_F_distribution_matches_R_in_both_tails(string column) => ReferenceRows.AssertColumn(Folder, Item, "f", column, row =>
    {
        var (x, numerator, denominator) = (row.Number("x"), row.Number("df1"), row.Number("df2"));
        return column == "cdf" ? FDistribution.Cdf(x, numerator, denominator) : FDistribution.UpperTail(x, numerator, denominator);
    });

    // R's qf loses digits at small p with one numerator degree of freedom and gives 0 for 2.5e-20; the exact values are those of the next test.
    [Fact]
    public void The_F_quantile_matches_R_as_far_as_R_is_exact() => ReferenceRows.AssertColumn(
        Folder, Item, "f_quantile", "q", 1e-8, 1e-13, row => FDistribution.Quantile(row.Number("p"), row.Number("df1"), row.Number("df2")));

    // mpmath 1.2.1, 45 digits, quantiles_high_precision.json.
    [Fact]
    public void The_F_quantile_is_exact_in_both_tails() => ReferenceRows.AssertColumn(
        Folder, "quantiles_high_precision", "f_quantile", "q", row => FDistribution.Quantile(row.Number("p"), row.Number("df1"), row.Number("df2")));

    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    public void The_chi_squared_distribution_matches_R_in_both_tails(string column) => ReferenceRows.AssertColumn(Folder, Item, "chi_squared", column, row =>
        column == "cdf" ? ChiSquaredDistribution.Cdf(row.Number("x"), row.Number("df")) : ChiSquaredDistribution.UpperTail(row.Number("x"), row.Number("df")));

    [Fact]
    public void The_chi_squared_quantile_matches_R() =>
        ReferenceRows.AssertColumn(Folder, Item, "chi_squared_quantile", "q", row => ChiSquaredDistribution.Quantile(row.Number("p"), row.Number("df")));

    [Theory]
    [InlineData("cdf")]
    [InlineData("upper")]
    public void The_beta_distribution_matches_R_in_both_tails(string column) => ReferenceRows.AssertColumn(Folder, Item, "beta", column, row =>
    {
        var (x, a, b) = (row.Number("x"), row.Number("a"), row.Number("b"));
        return column == "cdf" ? BetaDistribution.Cdf(x, a, b) : BetaDistribution.UpperTail(x, a, b);
    });

    [Fact]
    public void Log_gamma_matches_R() => ReferenceRows.AssertColumn(Folder, Item, "lgamma", "lgamma", row => GammaFunction.Log(row.Number("x")));

    // R 4.2.2: pt(-3, 1e9), pchisq(1e6 + 5000, 1e6, lower.tail = FALSE), pf(1.01, 1e5, 1e5, lower.tail = FALSE).
    [Fact]
    public void Very_many_degrees_of_freedom_lose_no_digits()
    {
        ReferenceData.AssertClose(0.0013498980648689594, StudentTDistribution.Cdf(-3, 1e9), 1e-11);
        ReferenceData.AssertClose(0.00020767800946702998, ChiSquaredDistribution.UpperTail(1e6 + 5000, 1e6), 1e-11);
        ReferenceData.AssertClose(0.05782719932715371, FDistribution.UpperTail(1.01, 1e5, 1e5), 1e-11);
    }

    [Fact]
    public void Infinite_degrees_of_freedom_give_the_normal_distribution() =>
        Assert.Equal(NormalDistribution.Quantile(0.95), StudentTDistribution.Quantile(0.95, double.PositiveInfinity));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void A_quantile_needs_a_probability_strictly_between_0_and_1(double probability)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentTDistribution.Quantile(probability, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalDistribution.Quantile(probability));
        Assert.Throws<ArgumentOutOfRangeException>(() => FDistribution.Quantile(probability, 2, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChiSquaredDistribution.Quantile(probability, 5));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Degrees_of_freedom_are_above_0(double df)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentTDistribution.Cdf(1, df));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChiSquaredDistribution.Cdf(1, df));
        Assert.Throws<ArgumentOutOfRangeException>(() => FDistribution.Cdf(1, df, 3));
    }

    [Fact]
    public void A_quantile_is_the_inverse_of_its_distribution_function() =>
        Gen.Select(Gen.Double[-12.0, -0.4], Gen.Double[0.3, 500], Gen.Double[0.3, 500]).Sample((exponent, a, b) =>
        {
            var p = Math.Pow(10, exponent);
            ReferenceData.AssertClose(p, StudentTDistribution.UpperTail(StudentTDistribution.UpperQuantile(p, a), a), 1e-11, what: "t");
            ReferenceData.AssertClose(p, ChiSquaredDistribution.UpperTail(ChiSquaredDistribution.UpperQuantile(p, a), a), 1e-11, what: "chi-squared");
            ReferenceData.AssertClose(p, FDistribution.UpperTail(FDistribution.UpperQuantile(p, a, b), a, b), 1e-11, what: "F");
            ReferenceData.AssertClose(p, BetaDistribution.Cdf(BetaDistribution.Quantile(p, a, b), a, b), 1e-11, what: "beta");
        }, iter: 200);

    // F with 1 and n degrees of freedom is the square of t with n: a textbook identity.
    [Fact]
    public void F_with_one_numerator_degree_of_freedom_is_t_squared() =>
        Gen.Select(Gen.Double[0.01, 30], Gen.Double[1, 400]).Sample((t, df) =>
            ReferenceData.AssertClose(2 * StudentTDistribution.UpperTail(t, df), FDistribution.UpperTail(t * t, 1, df), 1e-11), iter: 200);
}
