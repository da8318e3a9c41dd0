using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class ControlChartTests
{
    private static readonly double[] Nile = ReferenceData.Column("monitoring", "nile_control.csv", "y");

    // R 4.2.2 on datasets::Nile (Cobb 1978), first 28 values as baseline: mean -+ 3/1.128 mean moving range, 3.267 mean range, d2 = 2/sqrt(pi).
    [Fact]
    public void The_individuals_chart_matches_R()
    {
        void Check(string name, double got) => ReferenceRows.AssertValue("monitoring", "nile_control", "individuals", name, got);
        var baseline = Nile[..ReferenceData.Values("monitoring", "nile_control", "individuals").GetProperty("baseline_n").GetInt32()];
        var chart = IndividualsChart.Fit(baseline).GetOrThrow();
        Check("centre", chart.Centre);
        Check("mean_moving_range", chart.MeanMovingRange);
        Check("sigma_1128", chart.Sigma);
        Check("lower_3_over_1128", chart.Lower);
        Check("upper_3_over_1128", chart.Upper);
        Check("mr_upper_3267", chart.MovingRangeUpper);
        Check("lower_2660", chart.Centre - 2.66 * chart.MeanMovingRange);
        Check("upper_2660", chart.Centre + 2.66 * chart.MeanMovingRange);
        var exact = IndividualsChart.Fit(baseline, MovingRangeDivisor.Exact).GetOrThrow();
        Check("sigma_exact_d2", exact.Sigma);
        Check("lower_exact_d2", exact.Lower);
        Check("upper_exact_d2", exact.Upper);
        var beyond = ReferenceData.Values("monitoring", "nile_control", "individuals").Numbers("beyond_3_sigma").Select(position => (int)position - 1);
        Assert.Equal(beyond, chart.Beyond(Nile));
    }

    // R 4.2.2: z[t] = 0.2 y[t] + 0.8 z[t-1], z[0] = baseline mean; limits mean -+ 3 sigma sqrt(l/(2-l) (1-(1-l)^(2t))).
    [Fact]
    public void The_exponential_average_and_its_limits_match_R()
    {
        var values = ReferenceData.Values("monitoring", "nile_control", "ewma");
        var chart = IndividualsChart.Fit(Nile[..28]).GetOrThrow();
        var weight = values.Number("lambda");
        var limits = ExponentialAverage.Limits(chart.Centre, chart.Sigma, weight, 100);
        var z = ExponentialAverage.Smooth(Nile, weight, chart.Centre);
        AssertAll(values.Numbers("z"), z);
        AssertAll(values.Numbers("lower"), [.. limits.Select(limit => limit.Lower)]);
        AssertAll(values.Numbers("upper"), [.. limits.Select(limit => limit.Upper)]);
        AssertAll(values.Numbers("ewma_from_first"), ExponentialAverage.Smooth(Nile, weight));
        var signals = Enumerable.Range(0, 100).Where(i => z[i] < limits[i].Lower || z[i] > limits[i].Upper);
        Assert.Equal(values.Numbers("signals").Select(position => (int)position - 1), signals);
    }

    // R 4.2.2: C+[t] = max(0, C+[t-1] + y - mean - 0.5 sigma), C- alike; signal beyond 5 sigma.
    [Fact]
    public void The_cumulative_sums_match_R()
    {
        var values = ReferenceData.Values("monitoring", "nile_control", "cusum");
        var chart = IndividualsChart.Fit(Nile[..28]).GetOrThrow();
        var got = TabularCusum.Fit(Nile, chart.Centre, chart.Sigma);
        AssertAll(values.Numbers("upper"), got.Upper);
        AssertAll(values.Numbers("lower"), got.Lower);
        Assert.Equal(values.Numbers("signals").Select(position => (int)position - 1), got.Signals);
    }

    // The usual flow-rate example of individuals charts; R 4.2.2: mean(y), mean(abs(diff(y))), mean -+ 3/1.128 mean range.
    [Fact]
    public void The_flow_rate_example_has_its_usual_limits()
    {
        var chart = IndividualsChart.Fit([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]).GetOrThrow();
        Assert.Equal(50.81, chart.Centre, 1e-12);
        Assert.Equal(1.877778, chart.MeanMovingRange, 1e-6);
        Assert.Equal(45.81591, chart.Lower, 1e-5);
        Assert.Equal(55.80409, chart.Upper, 1e-5);
    }

    // R 4.2.2: z <- l z' + ..., l = 1 - 0.7^gap, invented totals in weeks 0 1 2 3 5 6 7 9 10 11.
    [Fact]
    public void A_missing_week_raises_the_weight_of_the_next_test()
    {
        double[] gaps = [1, 1, 1, 1, 2, 1, 1, 2, 1, 1];
        var got = ExponentialAverage.Smooth([331.2, 330.4, 327.1, 328.0, 327.3, 323.6, 324.5, 322.9, 319.8, 321.2], 0.3, gaps: gaps);
        double[] expected = [331.200, 330.960, 329.802, 329.261, 328.261, 326.863, 326.154, 324.494, 323.086, 322.520];
        foreach (var (value, found) in expected.Zip(got)) Assert.Equal(value, found, 5e-4);
    }

    [Fact]
    public void A_baseline_without_change_is_refused() => Assert.Equal(Refusal.ZeroVariance, IndividualsChart.Fit([62, 62, 62]).Refusal!.Reason);

    [Fact]
    public void An_average_stays_within_the_range_of_its_series() =>
        Gen.Select(Gen.Double[50, 80].Array[1, 30], Gen.Double[0.01, 1]).Sample((y, lambda) =>
            Assert.All(ExponentialAverage.Smooth(y, lambda), z => Assert.InRange(z, y.Min() - 1e-9, y.Max() + 1e-9)), iter: 100);

    private static void AssertAll(double[] expected, IReadOnlyList<double> got)
    {
        Assert.Equal(expected.Length, got.Count);
        foreach (var (value, found) in expected.Zip(got)) ReferenceData.AssertClose(value, found, 1e-10, 1e-10);
    }
}
