using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class NormalHierarchyTests
{
    private static readonly double[] Values = [-7.1, -2.3, 0.4, -4.8, 3.6, -11.2, -1.9];
    private static readonly double[] Errors = [1.5, 3.0, 2.0, 4.5, 2.5, 3.5, 1.0];

    // R 4.2.2: Q <- function(A) { w <- 1 / (A + s^2); sum(w * (D - sum(w * D) / sum(w))^2) }; pchisq(Q(w^2), 4, lower = FALSE), or pf(Q(w^2) / 4, 4, nu, lower = FALSE), as the distribution function
    // of w in 200,000 cells; mean, SD and uniroot() of the sum of normal distributions with mean o D + (1 - o) m, o = w^2 / (w^2 + s^2), and variance o s^2 + (1 - o)^2 / sum(w); with nu of
    // t distributions with nu + 4 df and that variance times (nu + Q) / (nu + 4). The fourth value is measured worst, the seventh best.
    [Theory]
    [InlineData(double.PositiveInfinity, 3, -4.133071141, 3.654825733, -10.250230933, 1.771882583)]
    [InlineData(double.PositiveInfinity, 6, -1.945352196, 0.984576119, -3.563605725, -0.324732742)]
    [InlineData(12, 3, -4.067218920, 3.747873741, -10.289884281, 1.958399728)]
    [InlineData(12, 6, -1.964117314, 1.064744402, -3.710398645, -0.235821372)]
    public void What_is_known_of_values_measured_unequally_well_matches_R(double degreesOfFreedom, int index, double mean, double deviation, double lower, double upper)
    {
        var known = new NormalHierarchy(Values, Errors, degreesOfFreedom).Of(index);
        var limits = known.Limits(ConfidenceLevel.Ninety);
        Assert.Equal([mean, deviation, lower, upper], [known.Mean, known.Deviation, limits.Lower, limits.Upper], (expected, got) => Math.Abs(expected - got) < 1e-3);
    }

    // James and Stein's estimate with unknown mean, D̄ + (1 - (k - 3) s² / Σ(D - D̄)²)(D - D̄), by hand for D = -9, -6, -3, 0, 3, 6, 9 and s = 1: Σ(D - D̄)² = 252, 9 (1 - 4 / 252) = 8.857143; that ω = 0 is believed by less than 1e-50.
    [Fact]
    public void Values_that_differ_far_beyond_their_errors_are_those_of_James_and_Stein()
    {
        double[] apart = [-9, -6, -3, 0, 3, 6, 9];
        Assert.Equal(8.857143, new NormalHierarchy(apart, [1, 1, 1, 1, 1, 1, 1]).Of(6).Mean, 1e-4);
    }

    // Hand arithmetic: equal values leave no spread; the common mean of 7 has the standard error 2 / √7.
    [Fact]
    public void Equal_values_are_their_common_mean()
    {
        var known = new NormalHierarchy([5, 5, 5, 5, 5, 5, 5], [2, 2, 2, 2, 2, 2, 2]).Of(2);
        Assert.Equal(5, known.Mean, 1e-12);
        Assert.Equal(2 / Math.Sqrt(7), known.Deviation, 1e-12);
    }
}
