using System.Globalization;
using System.Text.Json;
using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Segmented;

/// <summary>Bent lines against R 4.2.2, segmented 1.6-2, and an exhaustive search written in R (calls and tolerances in tests/Reference/segmented).</summary>
public sealed class BrokenLineTests
{
    private static readonly BrokenLineOptions NinetyFive = new() { ConfidenceLevel = ConfidenceLevel.NinetyFive };

    public static TheoryData<string> Items => ["stagnant", "plant_rkw"];

    public static TheoryData<string> Sequences =>
        [.. ReferenceData.Load("segmented", "generated_sequences").GetProperty("results").GetProperty("sequences").GetProperty("values").EnumerateArray().Select(row => row.GetProperty("sequence").GetString()!)];

    [Theory]
    [MemberData(nameof(Items))]
    public void Hinge_agrees_with_segmented(string item)
    {
        var (x, y) = Data(item);
        var expected = ReferenceData.Values("segmented", item, "segmented");
        var fit = BrokenLine.Fit(x, y, NinetyFive).GetOrThrow();
        ReferenceData.AssertClose(expected.GetProperty("psi").GetDouble(), fit.Knot.Value, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("psi_se").GetDouble(), fit.Knot.StandardError!.Value, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("psi_lower95").GetDouble(), fit.Knot.Lower!.Value, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("psi_upper95").GetDouble(), fit.Knot.Upper!.Value, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("sse").GetDouble(), fit.ResidualSumOfSquares, 1e-6);
        ReferenceData.AssertClose(expected.GetProperty("sigma").GetDouble(), fit.ResidualStandardDeviation!.Value, 1e-6);
        Assert.Equal(expected.GetProperty("df_residual").GetInt32(), fit.DegreesOfFreedom);
        ReferenceData.AssertClose(expected.GetProperty("logLik").GetDouble(), fit.LogLikelihood!.Value, 1e-6);
        AssertSlope(expected.GetProperty("slopes")[0], fit.SlopeBefore);
        AssertSlope(expected.GetProperty("slopes")[1], fit.SlopeAfter);
        Estimate[] coefficients = [fit.Intercept, fit.SlopeBefore, fit.SlopeChange];
        for (var k = 0; k < coefficients.Length; k++)
        {
            var row = expected.GetProperty("coefficients")[k];
            ReferenceData.AssertClose(row.GetProperty("Estimate").GetDouble(), coefficients[k].Value, 1e-4);
            ReferenceData.AssertClose(row.GetProperty("Std. Error").GetDouble(), coefficients[k].StandardError!.Value, 1e-4);
            ReferenceData.AssertClose(row.GetProperty("t value").GetDouble(), coefficients[k].Value / coefficients[k].StandardError!.Value, 1e-4);
            ReferenceData.AssertClose(Math.Log(row.GetProperty("Pr(>|t|)").GetDouble()), Math.Log(coefficients[k].PValue!.Value), 1e-4);
        }

        // The file's fourth coefficient is the knot's working column, 0 at convergence, with the knot's standard error.
        ReferenceData.AssertClose(expected.GetProperty("coefficients")[3].GetProperty("Std. Error").GetDouble(), fit.Knot.StandardError.Value, 1e-4);
    }

    [Theory]
    [MemberData(nameof(Items))]
    public void Hinge_agrees_with_an_exhaustive_search(string item)
    {
        var (x, y) = Data(item);
        var expected = ReferenceData.Values("segmented", item, "exhaustive");
        var fit = BrokenLine.Fit(x, y).GetOrThrow();
        ReferenceData.AssertClose(expected.GetProperty("knot").GetDouble(), fit.Knot.Value, 1e-5);
        ReferenceData.AssertClose(expected.GetProperty("sse").GetDouble(), fit.ResidualSumOfSquares, 1e-6);
        ReferenceData.AssertClose(expected.GetProperty("intercept").GetDouble(), fit.Intercept.Value, 1e-6);
        ReferenceData.AssertClose(expected.GetProperty("slope1").GetDouble(), fit.SlopeBefore.Value, 1e-6);
        ReferenceData.AssertClose(expected.GetProperty("slope2").GetDouble(), fit.SlopeAfter.Value, 1e-6);
    }

    [Theory]
    [MemberData(nameof(Items))]
    public void Straight_line_agrees_with_lm(string item)
    {
        var (x, y) = Data(item);
        var expected = ReferenceData.Values("segmented", item, "linear");
        var line = LeastSquares.FitLine(x, y).GetOrThrow();
        for (var k = 0; k < 2; k++)
        {
            var row = expected.GetProperty("coefficients")[k];
            ReferenceData.AssertClose(row.GetProperty("Estimate").GetDouble(), line.Coefficients[k].Value, 1e-9);
            ReferenceData.AssertClose(row.GetProperty("Std. Error").GetDouble(), line.Coefficients[k].StandardError, 1e-9);
            ReferenceData.AssertClose(row.GetProperty("t value").GetDouble(), line.Coefficients[k].T!.Value, 1e-9);
            ReferenceData.AssertClose(row.GetProperty("Pr(>|t|)").GetDouble(), line.Coefficients[k].PValue!.Value, 1e-8);
        }

        ReferenceData.AssertClose(expected.GetProperty("sse").GetDouble(), line.ResidualSumOfSquares, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("aic").GetDouble(), line.Aic!.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("bic").GetDouble(), line.Bic!.Value, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Items))]
    public void Tests_of_a_bend_agree_with_segmented(string item)
    {
        var (x, y) = Data(item);
        var expected = ReferenceData.Values("segmented", item, "davies");
        ReferenceData.AssertClose(expected.GetProperty("davies_p").GetDouble(), SlopeChange.Davies(x, y).GetOrThrow().PValue, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("pscore_p").GetDouble(), SlopeChange.Score(x, y).GetOrThrow().PValue, 1e-4);
    }

    [Theory]
    [MemberData(nameof(Sequences))]
    public void Bent_lines_of_a_sequence_of_sets_agree_with_R(string sequence)
    {
        var (x, y, expected) = Sequence(sequence);
        var mean = Descriptive.Mean(y);
        Assert.Equal(expected.GetProperty("n").GetInt32(), y.Length);
        ReferenceData.AssertClose(expected.GetProperty("flat").GetProperty("mean").GetDouble(), mean, 1e-8);
        ReferenceData.AssertClose(expected.GetProperty("flat").GetProperty("sse").GetDouble(), Descriptive.Variance(y) * (y.Length - 1), 1e-8);
        var line = LeastSquares.FitLine(x, y).GetOrThrow();
        var linear = expected.GetProperty("linear");
        ReferenceData.AssertClose(linear.GetProperty("intercept").GetDouble(), line.Coefficients[0].Value, 1e-8);
        ReferenceData.AssertClose(linear.GetProperty("slope").GetDouble(), line.Coefficients[1].Value, 1e-8);
        ReferenceData.AssertClose(linear.GetProperty("slope_se").GetDouble(), line.Coefficients[1].StandardError, 1e-8);
        ReferenceData.AssertClose(linear.GetProperty("slope_p").GetDouble(), line.Coefficients[1].PValue!.Value, 1e-8);
        ReferenceData.AssertClose(linear.GetProperty("sse").GetDouble(), line.ResidualSumOfSquares, 1e-8);

        var hinge = BrokenLine.Fit(x, y).GetOrThrow();
        AssertBend(expected.GetProperty("hinge"), hinge, knot => BrokenLine.FitAt(x, y, knot).GetOrThrow());
        foreach (var row in expected.GetProperty("hinge_at_integer_knots").EnumerateArray())
            ReferenceData.AssertClose(row.GetProperty("sse").GetDouble(), BrokenLine.FitAt(x, y, row.GetProperty("knot").GetDouble()).GetOrThrow().ResidualSumOfSquares, 1e-8);
        var plateauOptions = new BrokenLineOptions { Shape = BrokenLineShape.Plateau };
        var plateau = BrokenLine.Fit(x, y, plateauOptions).GetOrThrow();
        AssertBend(expected.GetProperty("plateau"), plateau, knot => BrokenLine.FitAt(x, y, knot, plateauOptions).GetOrThrow());
        AssertCriteria(expected, y.Length, [("flat", Descriptive.Variance(y) * (y.Length - 1), 2), ("linear", line.ResidualSumOfSquares, 3), ("hinge", hinge.ResidualSumOfSquares, hinge.Parameters), ("plateau", plateau.ResidualSumOfSquares, plateau.Parameters)]);

        var f = expected.GetProperty("f_hinge_vs_linear");
        if (f.ValueKind == JsonValueKind.Null) return;
        int df1 = f.GetProperty("df1").GetInt32(), df2 = f.GetProperty("df2").GetInt32();
        if (f.GetProperty("f").ValueKind != JsonValueKind.Null && df2 > 0)
            ReferenceData.AssertClose(f.GetProperty("f").GetDouble(), (line.ResidualSumOfSquares - hinge.ResidualSumOfSquares) / df1 / (hinge.ResidualSumOfSquares / df2), 1e-6, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Sequences))]
    public void One_step_in_a_sequence_of_sets_agrees_with_R(string sequence)
    {
        var (_, y, expected) = Sequence(sequence);
        var sums = MeanShifts.OneBreakSumsOfSquares(y);
        foreach (var row in expected.GetProperty("step_one_break").EnumerateArray())
            ReferenceData.AssertClose(row.GetProperty("sse").GetDouble(), sums[row.GetProperty("break_after").GetInt32() - 1], 1e-8);
    }

    [Fact]
    public void A_perfect_bend_is_found_where_it_is()
    {
        // By hand: level 30 up to 3.5, then 2 per set: 30, 30, 30, 31, 33, 35, 37, 39.
        double[] x = [1, 2, 3, 4, 5, 6, 7, 8], y = [30, 30, 30, 31, 33, 35, 37, 39];
        foreach (var shape in new[] { BrokenLineShape.Hinge, BrokenLineShape.Plateau })
        {
            var fit = BrokenLine.Fit(x, y, new BrokenLineOptions { Shape = shape }).GetOrThrow();
            ReferenceData.AssertClose(3.5, fit.Knot.Value, 1e-12);
            ReferenceData.AssertClose(2, fit.SlopeAfter.Value, 1e-12);
            Assert.Equal(0, fit.SlopeBefore.Value, 1e-12);
            Assert.Equal(0, fit.ResidualSumOfSquares, 1e-20);
        }
    }

    [Fact]
    public void No_knot_of_a_fine_grid_does_better_than_the_one_found() =>
        Gen.Double[-10, 10].Array[6, 14].Sample(
            y =>
            {
                double[] x = [.. Enumerable.Range(1, y.Length).Select(k => (double)k)];
                foreach (var shape in new[] { BrokenLineShape.Hinge, BrokenLineShape.Plateau })
                {
                    var options = new BrokenLineOptions { Shape = shape };
                    var best = BrokenLine.Fit(x, y, options).GetOrThrow();
                    for (var knot = shape == BrokenLineShape.Hinge ? 2.0 : 1.0; knot <= y.Length - 1; knot += 0.05)
                    {
                        var there = BrokenLine.FitAt(x, y, knot, options).GetOrThrow().ResidualSumOfSquares;
                        Assert.True(best.ResidualSumOfSquares <= there * (1 + 1e-9) + 1e-12);
                    }
                }
            },
            iter: 20);

    [Theory]
    [MemberData(nameof(Items))]
    public void Profile_limits_of_a_knot_are_where_the_sum_of_squares_has_risen_by_F(string item)
    {
        // By its definition. The limits from the standard error are symmetric, these need not be: they may differ by about one standard error.
        var (x, y) = Data(item);
        var fit = BrokenLine.Fit(x, y, NinetyFive).GetOrThrow();
        var limits = fit.KnotProfile!.Value;
        var bound = fit.ResidualSumOfSquares * (1 + FDistribution.Quantile(0.95, 1, fit.DegreesOfFreedom) / fit.DegreesOfFreedom);
        ReferenceData.AssertClose(bound, BrokenLine.FitAt(x, y, limits.Lower).GetOrThrow().ResidualSumOfSquares, 1e-6);
        ReferenceData.AssertClose(bound, BrokenLine.FitAt(x, y, limits.Upper).GetOrThrow().ResidualSumOfSquares, 1e-6);
        ReferenceData.AssertClose(fit.Knot.Lower!.Value, limits.Lower, 0, 1.5 * fit.Knot.StandardError!.Value);
        ReferenceData.AssertClose(fit.Knot.Upper!.Value, limits.Upper, 0, 1.5 * fit.Knot.StandardError.Value);
        Assert.Empty(fit.Notes);
    }

    [Fact]
    public void A_line_without_a_bend_leaves_the_knot_open_and_says_so()
    {
        double[] x = [1, 2, 3, 4, 5, 6, 7, 8], y = [1.0, 2.1, 2.9, 4.05, 4.95, 6.0, 7.1, 7.9];
        var fit = BrokenLine.Fit(x, y).GetOrThrow();
        Assert.Contains(fit.Notes, note => note.Contains("edge of the search", StringComparison.Ordinal));
        Assert.True(fit.KnotProfile!.Value.Contains(fit.Knot.Value));
    }

    [Fact]
    public void Shift_and_scale_move_the_line_and_leave_the_knot() =>
        Gen.Select(Gen.Double[-10, 10].Array[7, 12], Gen.Double[-1000, 1000], Gen.Double[0.1, 10]).Sample(
            (y, shift, scale) =>
            {
                double[] x = [.. Enumerable.Range(1, y.Length).Select(k => (double)k)];
                var before = BrokenLine.Fit(x, y).GetOrThrow();
                var after = BrokenLine.Fit(x, [.. y.Select(value => shift + scale * value)]).GetOrThrow();
                ReferenceData.AssertClose(scale * scale * before.ResidualSumOfSquares, after.ResidualSumOfSquares, 1e-7, 1e-9 * scale * scale);
            },
            iter: 100);

    [Fact]
    public void A_line_that_fits_to_within_rounding_has_its_knot_and_no_error()
    {
        // By hand: a first set apart and all others equal but for rounding, so the line bends at set 2.
        double[] y = [-7.271362458322024, -5d / 77, 0, -6026E-64, 4497E-94, 0, 0];
        var fit = BrokenLine.Fit([1, 2, 3, 4, 5, 6, 7], [.. y.Select(value => (-328d / 43) + (2 * value))]).GetOrThrow();
        Assert.InRange(fit.ResidualSumOfSquares, 0, 0.01);
    }

    [Fact]
    public void Too_few_sets_are_refused() =>
        Assert.Equal("Not enough data for the bent line: needs 4 different x, has 3 different x.", BrokenLine.Fit([1, 2, 3], [1, 2, 4]).ToString());

    [Fact]
    public void Equal_times_are_refused() => Assert.Equal(Refusal.ZeroVariance, BrokenLine.Fit([1, 2, 3, 4, 5], [60, 60, 60, 60, 60]).Refusal!.Reason);

    [Fact]
    public void A_knot_outside_the_data_is_a_caller_mistake() => Assert.Throws<ArgumentOutOfRangeException>(() => BrokenLine.FitAt([1, 2, 3, 4, 5], [1, 2, 3, 4, 6], 7));

    [Theory]
    [InlineData(4)]
    [InlineData(3)]
    public void Tests_of_a_bend_need_five_observations(int count)
    {
        double[] x = [.. Enumerable.Range(1, count).Select(k => (double)k)];
        Assert.Equal(Refusal.TooFewObservations, SlopeChange.Davies(x, x).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewObservations, SlopeChange.Score(x, x).Refusal!.Reason);
    }

    private static void AssertBend(ReferenceValue expected, BrokenLineFit fit, Func<double, BrokenLineFit> at)
    {
        var sse = expected.GetProperty("sse").GetDouble();
        ReferenceData.AssertClose(sse, fit.ResidualSumOfSquares, 1e-7);

        // Two knots can fit nearly alike, and a knot at an end of the search leaves parts of the line open: then only the sum of squares is compared.
        var knot = expected.GetProperty("knot").GetDouble();
        if (Math.Abs(knot - fit.Knot.Value) > 1e-5)
        {
            ReferenceData.AssertClose(at(knot).ResidualSumOfSquares, fit.ResidualSumOfSquares, 1e-7);
            return;
        }

        // The reference's knot is known to 1e-5, and its line moves with it.
        foreach (var (name, value) in new[] { ("slope1", fit.SlopeBefore.Value), ("slope2", fit.SlopeAfter.Value), ("intercept", fit.Intercept.Value), ("level", fit.Intercept.Value), ("slope", fit.SlopeAfter.Value) })
        {
            if (expected.TryGetProperty(name, out var number)) ReferenceData.AssertClose(number.GetDouble(), value, 1e-5, 1e-5, name);
        }
    }

    private static void AssertCriteria(ReferenceValue expected, int n, IReadOnlyList<(string Name, double Rss, int Parameters)> models)
    {
        var criteria = models.Select(model => InformationCriteria.Aicc(n, model.Rss, model.Parameters)).ToArray();
        var weights = InformationCriteria.Weights(criteria);
        for (var k = 0; k < models.Count; k++)
        {
            AssertSame(expected.GetProperty("aicc"), models[k].Name, criteria[k], 1e-6);
            AssertSame(expected.GetProperty("bic"), models[k].Name, InformationCriteria.Bic(n, models[k].Rss, models[k].Parameters), 1e-6);
            AssertSame(expected.GetProperty("akaike_weights"), models[k].Name, weights[k], 1e-6);
        }
    }

    private static void AssertSame(ReferenceValue row, string name, double? got, double tolerance)
    {
        if (!row.TryGetProperty(name, out var number) || number.ValueKind == JsonValueKind.Null) Assert.Null(got);
        else ReferenceData.AssertClose(number.GetDouble(), got!.Value, tolerance, 1e-12, name);
    }

    private static void AssertSlope(ReferenceValue row, Estimate slope)
    {
        ReferenceData.AssertClose(row.GetProperty("Est.").GetDouble(), slope.Value, 1e-4);
        ReferenceData.AssertClose(row.GetProperty("St.Err.").GetDouble(), slope.StandardError!.Value, 1e-4);
        ReferenceData.AssertClose(row.GetProperty("t value").GetDouble(), slope.Value / slope.StandardError.Value, 1e-4);
        ReferenceData.AssertClose(row.GetProperty("CI(95%).l").GetDouble(), slope.Lower!.Value, 1e-4);
        ReferenceData.AssertClose(row.GetProperty("CI(95%).u").GetDouble(), slope.Upper!.Value, 1e-4);
    }

    private static (double[] X, double[] Y) Data(string item) => (ReferenceData.Column("segmented", item + ".csv", "x"), ReferenceData.Column("segmented", item + ".csv", "y"));

    private static (double[] X, double[] Y, ReferenceValue Expected) Sequence(string sequence)
    {
        var data = ReferenceData.Text("segmented", "generated_sequences.csv");
        var rows = Enumerable.Range(0, data["sequence"].Length).Where(row => data["sequence"][row] == sequence).ToArray();
        double[] Numeric(string column) => [.. rows.Select(row => double.Parse(data[column][row], CultureInfo.InvariantCulture))];
        var expected = ReferenceData.Values("segmented", "generated_sequences", "sequences").EnumerateArray().Single(row => row.GetProperty("sequence").GetString() == sequence);
        return (Numeric("set"), Numeric("seconds"), expected);
    }
}
