using System.Text.Json;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class AnovaTests
{
    private static readonly double[] Totals =
    [
        329.0, 325.2, 327.1, 322.9, 298.4, 301.0, 296.2, 294.8, 356.1, 349.5, 352.0, 345.3, 312.7, 309.9, 313.5, 306.4,
        341.0, 344.6, 337.2, 338.8, 285.3, 283.1, 286.0, 281.7, 367.9, 358.8, 361.4, 355.0, 320.5, 322.0, 315.9, 317.3,
    ];

    private static readonly string[] Athletes = [.. Enumerable.Range(0, 32).Select(i => $"B{i / 4 + 1}")];
    private static readonly string[] Tests = [.. Enumerable.Range(0, 32).Select(i => $"{i % 4 + 1}")];

    // NIST/ITL Statistical Reference Datasets, analysis of variance: certified values, and (R 4.2.2, data minus a constant first) the best
    // that doubles allow, because the hardest sets lose digits as soon as they are stored as doubles.
    [Theory]
    [InlineData("SiRstv")]
    [InlineData("SmLs01")]
    [InlineData("SmLs04")]
    [InlineData("SmLs05")]
    [InlineData("SmLs07")]
    [InlineData("SmLs08")]
    public void The_certified_one_way_analyses_are_met(string item)
    {
        var got = OneWayAnova.Fit(ReferenceData.Column("nist", item + ".csv", "y"), ReferenceData.Text("nist", item + ".csv")["group"]).GetOrThrow();
        var results = ReferenceData.Results("nist", item, "certified");
        var relative = ReferenceRows.Tolerance(results).Relative;
        var certified = results.GetProperty("values");
        void Check(double expected, double found, string what) => ReferenceData.AssertClose(expected, found, relative, what: $"{item} {what}");
        Assert.Equal(certified.GetProperty("between").GetProperty("df").GetInt32(), got.Between.DegreesOfFreedom);
        Assert.Equal(certified.GetProperty("within").GetProperty("df").GetInt32(), got.Within.DegreesOfFreedom);
        Check(certified.GetProperty("between").Number("ss"), got.Between.SumOfSquares, "between");
        Check(certified.GetProperty("within").Number("ss"), got.Within.SumOfSquares, "within");
        Check(certified.GetProperty("between").Number("ms"), got.Between.MeanSquare!.Value, "between, mean square");
        Check(certified.GetProperty("within").Number("ms"), got.Within.MeanSquare!.Value, "within, mean square");
        Check(certified.GetProperty("between").Number("f"), got.Between.F!.Value, "F");
        Check(certified.Number("r_squared"), got.RSquared!.Value, "R²");
        Check(certified.Number("residual_sd"), got.ResidualStandardDeviation, "residual SD");
        ReferenceRows.AssertValue("nist", item, "best_in_double", "f", got.Between.F.Value);
        ReferenceRows.AssertValue("nist", item, "best_in_double", "ss_between", got.Between.SumOfSquares);
        ReferenceRows.AssertValue("nist", item, "best_in_double", "ss_within", got.Within.SumOfSquares);
        ReferenceRows.AssertValue("nist", item, "best_in_double", "p", got.Between.PValue!.Value);
    }

    // R 4.2.2: anova(lm(y ~ athlete + factor(test))) on 8 athletes x 4 tests, invented totals.
    [Fact]
    public void A_complete_two_way_table_matches_R()
    {
        var got = TwoWayAnova.Fit(Totals, Athletes, Tests).GetOrThrow();
        Assert.True(got.IsComplete);
        Assert.Equal(21, got.DegreesOfFreedom);
        ReferenceData.AssertClose(2.55027134410663, got.ResidualStandardDeviation, 1e-12);
        ReferenceData.AssertClose(2764.778526786, got.Rows.MeanSquare!.Value, 1e-12);
        ReferenceData.AssertClose(50.9953125, got.Columns.MeanSquare!.Value, 1e-11);
        ReferenceData.AssertClose(7.84075, got.Columns.F!.Value, 1e-6);
        ReferenceData.AssertClose(0.0010685, got.Columns.PValue!.Value, 1e-4);
    }

    // R 4.2.2: the same after u <- q[-c(3, 9, 14, 30), ]; summary(l)$sigma, anova(l).
    [Fact]
    public void An_incomplete_two_way_table_matches_R()
    {
        var kept = Enumerable.Range(0, 32).Except([2, 8, 13, 29]).ToArray();
        var got = TwoWayAnova.Fit([.. kept.Select(i => Totals[i])], [.. kept.Select(i => Athletes[i])], [.. kept.Select(i => Tests[i])]).GetOrThrow();
        Assert.False(got.IsComplete);
        Assert.Equal(17, got.DegreesOfFreedom);
        ReferenceData.AssertClose(2.59470142602113, got.ResidualStandardDeviation, 1e-11);
        ReferenceData.AssertClose(18134.6102380952, got.Rows.SumOfSquares, 1e-11);
        ReferenceData.AssertClose(121.816250000001, got.Columns.SumOfSquares, 1e-11);
        ReferenceData.AssertClose(384.800302535779, got.Rows.F!.Value, 1e-10);
        ReferenceData.AssertClose(6.03127582503598, got.Columns.F!.Value, 1e-10);
    }

    // datasets::InsectSprays (Beall 1942), R 4.2.2: anova(lm(value ~ group)).
    [Fact]
    public void The_insect_sprays_match_R()
    {
        var table = ReferenceData.Text("comparison", "insectsprays.csv");
        var got = OneWayAnova.Fit(ReferenceData.Column("comparison", "insectsprays.csv", "value"), table["group"]).GetOrThrow();
        var rows = ReferenceData.Values("comparison", "insectsprays", "anova");
        foreach (var (row, found) in new[] { (rows[0], got.Between), (rows[1], got.Within) })
        {
            Assert.Equal(row.GetProperty("Df").GetInt32(), found.DegreesOfFreedom);
            ReferenceData.AssertClose(row.Number("Sum Sq"), found.SumOfSquares, 1e-9);
            ReferenceData.AssertClose(row.Number("Mean Sq"), found.MeanSquare!.Value, 1e-9);
        }

        ReferenceData.AssertClose(rows[0].Number("F value"), got.Between.F!.Value, 1e-9);
        ReferenceData.AssertClose(rows[0].Number("Pr(>F)"), got.Between.PValue!.Value, 1e-9);
        Assert.Equal((JsonValueKind.Null, JsonValueKind.Null), (rows[1].GetProperty("F value").ValueKind, rows[1].GetProperty("Pr(>F)").ValueKind));
        Assert.Equal((null, null), (got.Within.F, got.Within.PValue));
    }

    [Fact]
    public void The_order_of_observations_does_not_matter()
    {
        var order = new SeededRandom(5).Shuffle([.. Enumerable.Range(0, 32)]);
        var plain = TwoWayAnova.Fit(Totals, Athletes, Tests).GetOrThrow();
        var shuffled = TwoWayAnova.Fit([.. order.Select(i => Totals[i])], [.. order.Select(i => Athletes[i])], [.. order.Select(i => Tests[i])]).GetOrThrow();
        Assert.Equal(plain.ResidualStandardDeviation, shuffled.ResidualStandardDeviation, 1e-12);
    }

    [Fact]
    public void One_group_or_one_test_is_refused()
    {
        Assert.Equal("Not enough data for the analysis of variance: needs 2 groups, has 1 groups.", OneWayAnova.Fit([1, 2], ["a", "a"]).ToString());
        Assert.Equal(Refusal.TooFewObservations, TwoWayAnova.Fit([1, 2], ["a", "b"], ["1", "1"]).Refusal!.Reason);
    }

    [Fact]
    public void A_cell_filled_twice_is_the_callers_mistake() =>
        Assert.Throws<ArgumentException>(() => TwoWayAnova.Fit([1, 2, 3, 4, 5], ["a", "a", "b", "b", "b"], ["1", "2", "1", "2", "2"]));
}
