using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class PowerTests
{
    // R 4.2.2: power.t.test(n, delta, sd, sig.level = alpha, type, alternative), strict = TRUE, and solved for n and delta with tol = 1e-12.
    [Fact]
    public void Power_matches_R() => ReferenceRows.AssertColumn("power", "power_t", "power", "power", row =>
        TTestPower.Power(row.Number("n"), row.Number("delta"), row.Number("sd"), Options(row)));

    [Fact]
    public void Power_that_counts_the_wrong_direction_matches_R() => ReferenceRows.AssertColumn("power", "power_t", "power", "power_strict", row =>
        TTestPower.Power(row.Number("n"), row.Number("delta"), row.Number("sd"), Options(row) with { CountWrongDirection = true }));

    [Theory]
    [InlineData("n_for_80", 0.8)]
    [InlineData("n_for_90", 0.9)]
    public void The_number_of_athletes_matches_R(string column, double power) => ReferenceRows.AssertColumn("power", "power_t", "power", column, 1e-6, 0, row =>
        TTestPower.SampleSize(power, row.Number("delta"), row.Number("sd"), Options(row)));

    [Fact]
    public void The_detectable_difference_matches_R() => ReferenceRows.AssertColumn("power", "power_t", "power", "detectable_delta_80", 1e-6, 0, row =>
        TTestPower.DetectableDifference(row.Number("n"), 0.8, row.Number("sd"), Options(row)));

    // R 4.2.2: smallest n with qnorm((1 + conf)/2) te sqrt(2/n) <= change; qnorm(.8) added for power; qnorm((1 + conf)/2) sqrt(2) te.
    [Fact]
    public void The_number_of_repeated_tests_matches_R()
    {
        static double Exact(ReferenceValue row, double? power) => RepeatedTests.Needed(row.Number("te"), row.Number("change"), new ConfidenceLevel(row.Number("conf")), power);
        void Check(string column, Func<ReferenceValue, double> got) => ReferenceRows.AssertColumn("power", "power_t", "repeats", column, got);
        Check("n_exact_z", row => Exact(row, null));
        Check("n_z", row => Math.Ceiling(Exact(row, null)));
        Check("n_power80_exact", row => Exact(row, 0.8));
        Check("n_power80", row => Math.Ceiling(Exact(row, 0.8)));
        Check("mdc_single", row => RepeatedTests.MinimalDetectableChange(row.Number("te"), new ConfidenceLevel(row.Number("conf"))));
    }

    [Fact]
    public void Two_athletes_are_enough_for_a_huge_difference() => Assert.Equal(2, TTestPower.SampleSize(0.8, 1000, 1));

    [Fact]
    public void The_wanted_power_is_above_the_level_of_the_test() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TTestPower.DetectableDifference(8, 0.04, 1));

    private static PowerOptions Options(ReferenceValue row) => new()
    {
        Alpha = row.Number("alpha"),
        TwoSided = row.GetProperty("alt").GetString() == "two.sided",
        Design = row.GetProperty("type").GetString() == "two.sample" ? TTestDesign.TwoGroups : TTestDesign.Paired,
    };
}
