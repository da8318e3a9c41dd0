using System.Text.Json;
using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class LeastSquaresTests
{
    // NIST/ITL Statistical Reference Datasets, linear least squares: certified coefficients, standard errors, residual SD, R², analysis
    // of variance. The tolerances stand in the files; certified zeros (Wampler1) are compared absolutely.
    [Theory]
    [InlineData("Norris", 1)]
    [InlineData("NoInt1", 0)]
    [InlineData("Longley", 1)]
    [InlineData("Filip", 10)]
    [InlineData("Wampler1", 5)]
    [InlineData("Wampler3", 5)]
    [InlineData("Wampler5", 5)]
    public void The_certified_regressions_are_met(string item, int degree)
    {
        var fit = LeastSquares.Fit(ReferenceData.Column("nist", item + ".csv", "y"), CertifiedDesign(item, degree)).GetOrThrow();
        var results = ReferenceData.Results("nist", item, "certified");
        var (relative, absolute) = ReferenceRows.Tolerance(results);
        void Check(double expected, double got, string what) => ReferenceData.AssertClose(expected, got, relative, expected == 0 ? absolute : 0, $"{item} {what}");
        var certified = results.GetProperty("values");
        var coefficients = certified.GetProperty("coefficients").EnumerateArray().ToArray();
        Assert.Equal(coefficients.Length, fit.Coefficients.Count);
        for (var i = 0; i < coefficients.Length; i++)
        {
            Check(coefficients[i].Number("estimate"), fit.Coefficients[i].Value, $"coefficient {i}");
            Check(coefficients[i].Number("se"), fit.Coefficients[i].StandardError, $"standard error {i}");
        }

        Check(certified.Number("residual_sd"), fit.ResidualStandardDeviation, "residual SD");
        Check(certified.Number("r_squared"), fit.RSquared!.Value, "R²");
        Check(certified.GetProperty("residual").Number("ss"), fit.ResidualSumOfSquares, "residual sum of squares");
        Assert.Equal(certified.GetProperty("residual").GetProperty("df").GetInt32(), fit.DegreesOfFreedom);
        var regression = certified.GetProperty("regression");
        Assert.Equal(regression.GetProperty("df").GetInt32(), fit.Overall.DegreesOfFreedom);
        Check(regression.Number("ss"), fit.Overall.SumOfSquares, "regression sum of squares");
        Check(regression.Number("ms"), fit.Overall.MeanSquare!.Value, "regression mean square");
        Check(certified.GetProperty("residual").Number("ms"), Math.Pow(fit.ResidualStandardDeviation, 2), "residual mean square");
        if (regression.GetProperty("f").ValueKind == JsonValueKind.Number) Check(regression.Number("f"), fit.Overall.F!.Value, "F");
        else Assert.Equal(("Infinity", true), (regression.GetProperty("f").GetString(), fit.Overall.F is null or > 1e20));
    }

    // R 4.2.2: l <- lm(...); summary(l); confint(l); vcov(l); AIC(l); BIC(l).
    [Theory]
    [InlineData("stackloss")]
    [InlineData("cars_quadratic")]
    [InlineData("anorexia_ancova")]
    public void Coefficients_limits_and_criteria_match_R(string item)
    {
        var fit = ReferenceFit(item);
        var values = ReferenceData.Values("regression", item, "fit");
        void Check(double expected, double got, string what) => ReferenceData.AssertClose(expected, got, 1e-8, what: $"{item} {what}");
        var rows = values.GetProperty("coefficients").EnumerateArray().Zip(values.GetProperty("confint").EnumerateArray()).ToArray();
        Assert.Equal(rows.Length, fit.Coefficients.Count);
        for (var i = 0; i < rows.Length; i++)
        {
            var (row, limits) = rows[i];
            var coefficient = fit.Coefficients[i];
            Check(row.Number("Estimate"), coefficient.Value, coefficient.Name);
            Check(row.Number("Std. Error"), coefficient.StandardError, coefficient.Name);
            Check(row.Number("t value"), coefficient.T!.Value, coefficient.Name);
            Check(row.Number("Pr(>|t|)"), coefficient.PValue!.Value, coefficient.Name);
            Check(limits.Number("2.5 %"), coefficient.Interval(ConfidenceLevel.NinetyFive).Lower, coefficient.Name);
            Check(limits.Number("97.5 %"), coefficient.Interval(ConfidenceLevel.NinetyFive).Upper, coefficient.Name);
            foreach (var (expected, j) in values.GetProperty("vcov")[i].EnumerateArray().Select((element, j) => (element.GetDouble(), j)))
                Check(expected, fit.Covariance[i, j], $"vcov {i} {j}");
        }

        Check(values.Number("sigma"), fit.ResidualStandardDeviation, "sigma");
        Assert.Equal(values.GetProperty("df_residual").GetInt32(), fit.DegreesOfFreedom);
        Check(values.Number("r_squared"), fit.RSquared!.Value, "R²");
        Check(values.Number("adj_r_squared"), fit.AdjustedRSquared!.Value, "adjusted R²");
        Check(values.GetProperty("f").Number("value"), fit.Overall.F!.Value, "F");
        Assert.Equal((values.GetProperty("f").GetProperty("numdf").GetInt32(), values.GetProperty("f").GetProperty("dendf").GetInt32()), (fit.Overall.DegreesOfFreedom, fit.DegreesOfFreedom));
        Check(values.Number("f_p"), fit.Overall.PValue!.Value, "p of F");
        Check(values.Number("rss"), fit.ResidualSumOfSquares, "RSS");
        Check(values.Number("logLik"), fit.LogLikelihood!.Value, "logLik");
        Check(values.Number("aic"), fit.Aic!.Value, "AIC");
        Check(values.Number("bic"), fit.Bic!.Value, "BIC");
    }

    // R 4.2.2: anova(l), each term after those before it.
    [Theory]
    [InlineData("stackloss")]
    [InlineData("cars_quadratic")]
    [InlineData("anorexia_ancova")]
    public void The_sequential_analysis_of_variance_matches_R(string item)
    {
        var table = ReferenceFit(item).Anova;
        var rows = ReferenceData.Values("regression", item, "anova").EnumerateArray().ToArray();
        Assert.Equal(rows.Length, table.Count);
        foreach (var (expected, got) in rows.Zip(table))
        {
            Assert.Equal(expected.GetProperty("Df").GetInt32(), got.DegreesOfFreedom);
            ReferenceData.AssertClose(expected.Number("Sum Sq"), got.SumOfSquares, 1e-9, what: got.Term);
            ReferenceData.AssertClose(expected.Number("Mean Sq"), got.MeanSquare!.Value, 1e-9, what: got.Term);
            Assert.Equal(expected.GetProperty("F value").ValueKind == JsonValueKind.Null, got.F is null);
            Assert.Equal(expected.GetProperty("Pr(>F)").ValueKind == JsonValueKind.Null, got.PValue is null);
            if (got.F is null) continue;
            ReferenceData.AssertClose(expected.Number("F value"), got.F.Value, 1e-9, what: got.Term);
            ReferenceData.AssertClose(expected.Number("Pr(>F)"), got.PValue!.Value, 1e-9, what: got.Term);
        }
    }

    // R 4.2.2: hatvalues(l); rstandard(l); rstudent(l); cooks.distance(l); fitted(l); resid(l).
    [Theory]
    [InlineData("stackloss")]
    [InlineData("cars_quadratic")]
    [InlineData("anorexia_ancova")]
    public void Leverage_and_studentised_residuals_match_R(string item)
    {
        var rows = ReferenceData.Values("regression", item, "diagnostics").EnumerateArray().ToArray();
        var diagnostics = ReferenceFit(item).Diagnostics();
        Assert.Equal(rows.Length, diagnostics.Count);
        foreach (var (index, (row, got)) in rows.Zip(diagnostics).Index())
        {
            Assert.Equal(index + 1, row.GetProperty("row").GetInt32());
            ReferenceData.AssertClose(row.Number("fitted"), got.Fitted, 1e-8, what: "fitted");
            ReferenceData.AssertClose(row.Number("residual"), got.Residual, 1e-8, what: "residual");
            ReferenceData.AssertClose(row.Number("leverage"), got.Leverage, 1e-8, what: "leverage");
            ReferenceData.AssertClose(row.Number("rstandard"), got.StandardizedResidual!.Value, 1e-8, what: "rstandard");
            ReferenceData.AssertClose(row.Number("rstudent"), got.StudentizedResidual!.Value, 1e-8, what: "rstudent");
            ReferenceData.AssertClose(row.Number("cooks"), got.CookDistance!.Value, 1e-8, what: "cooks");
        }
    }

    // R 4.2.2: predict(l, newdata, interval = "confidence"); interval = "prediction".
    [Theory]
    [InlineData("stackloss")]
    [InlineData("cars_quadratic")]
    public void Predictions_with_both_intervals_match_R(string item)
    {
        var fit = ReferenceFit(item);
        foreach (var row in ReferenceData.Values("regression", item, "prediction").EnumerateArray())
        {
            double[] at = item == "stackloss"
                ? [1, row.Number("Air.Flow"), row.Number("Water.Temp"), row.Number("Acid.Conc.")]
                : [1, row.Number("speed"), row.Number("speed") * row.Number("speed")];
            var got = fit.Predict(at, ConfidenceLevel.NinetyFive).GetOrThrow();
            ReferenceData.AssertClose(row.Number("fit"), got.Value, 1e-8);
            ReferenceData.AssertClose(row.Number("conf_lower95"), got.MeanInterval.Lower, 1e-8);
            ReferenceData.AssertClose(row.Number("conf_upper95"), got.MeanInterval.Upper, 1e-8);
            ReferenceData.AssertClose(row.Number("pred_lower95"), got.NewObservationInterval.Lower, 1e-8);
            ReferenceData.AssertClose(row.Number("pred_upper95"), got.NewObservationInterval.Upper, 1e-8);
        }
    }

    // R 4.2.2: anova(lm(Postwt ~ Prewt + Treat), lm(Postwt ~ Prewt * Treat)) on MASS::anorexia.
    [Fact]
    public void Two_nested_fits_are_compared_as_in_R()
    {
        var larger = LeastSquares.Fit(ReferenceData.Column("regression", "anorexia_ancova.csv", "Postwt"), ReferenceDesign("anorexia_ancova").AddInteraction("Prewt", "Treat")).GetOrThrow();
        var got = NestedComparison.Compare(ReferenceFit("anorexia_ancova"), larger);
        ReferenceRows.AssertValue("regression", "anorexia_ancova", "interaction", "f", got.F!.Value);
        ReferenceRows.AssertValue("regression", "anorexia_ancova", "interaction", "p", got.PValue!.Value);
        var rss = ReferenceData.Values("regression", "anorexia_ancova", "interaction").Numbers("rss");
        ReferenceData.AssertClose(rss[0], ReferenceFit("anorexia_ancova").ResidualSumOfSquares, 1e-9);
        ReferenceData.AssertClose(rss[1], larger.ResidualSumOfSquares, 1e-9);
    }

    [Fact]
    public void A_column_that_others_explain_is_set_aside_and_named()
    {
        double[] x = [1, 2, 3, 4, 5, 6], y = [2.1, 3.9, 6.2, 7.8, 10.1, 12.2];
        var design = RegressionDesign.WithIntercept(6).Add("x", x).Add("twice x plus 1", [.. x.Select(value => 2 * value + 1)]);
        var fit = LeastSquares.Fit(y, design).GetOrThrow();
        var line = LeastSquares.FitLine(x, y).GetOrThrow();
        Assert.Equal(["twice x plus 1"], fit.AliasedColumns);
        Assert.Equal(2, fit.Rank);
        Assert.Equal(line.Coefficients[1].Value, fit.Coefficients[1].Value, 1e-12);
        Assert.Equal(Refusal.WeaklyIdentified, fit.Contrast("its own slope", [0, 0, 1]).Refusal!.Reason);
        var consistent = fit.Predict([1, 3.5, 8], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(line.Predict([1, 3.5], ConfidenceLevel.Ninety).GetOrThrow().Value, consistent.Value, 1e-12);
    }

    // R 4.2.2: confint(lm(c(62.4, 63.1, 64.0, 69.2, 70.3) ~ I(1:5)), level = .9).
    [Fact]
    public void The_slope_of_one_session_has_the_interval_that_R_gives()
    {
        var slope = LeastSquares.FitLine([1, 2, 3, 4, 5], [62.4, 63.1, 64.0, 69.2, 70.3]).GetOrThrow().Coefficient("slope");
        Assert.Equal(2.19, slope.Value, 1e-12);
        Assert.Equal(0.444934, slope.StandardError, 1e-6);
        Assert.Equal(1.14291, slope.Interval(ConfidenceLevel.Ninety).Lower, 1e-5);
        Assert.Equal(3.23709, slope.Interval(ConfidenceLevel.Ninety).Upper, 1e-5);
    }

    [Fact]
    public void As_many_columns_as_observations_are_refused() =>
        Assert.Equal("Not enough data for the least-squares fit: needs 3 observations, has 2 observations.", LeastSquares.FitLine([1, 2], [3, 4]).ToString());

    [Fact]
    public void A_design_refuses_columns_of_another_length_and_names_that_are_taken()
    {
        var design = RegressionDesign.WithIntercept(3).Add("x", [1, 2, 3]);
        Assert.Throws<ArgumentException>(() => design.Add("y", [1, 2]));
        Assert.Throws<ArgumentException>(() => design.Add("x", [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => design.AddFactor("group", ["a", "b", "a"], reference: "c"));
        Assert.Throws<ArgumentException>(() => LeastSquares.Fit([1, 2], design));
    }

    [Fact]
    public void Shifting_and_scaling_the_response_shifts_and_scales_the_fit() =>
        Gen.Select(Gen.Double[-10, 10].Array[8], Gen.Double[-10, 10].Array[8], Gen.Double[-100, 100], Gen.Double[0.5, 5]).Sample((x, y, shift, scale) =>
        {
            var plain = LeastSquares.FitLine(x, y).GetOrThrow();
            var moved = LeastSquares.FitLine(x, [.. y.Select(value => scale * value + shift)]).GetOrThrow();
            if (plain.Rank < 2 || plain.Coefficients[1].StandardError > 1e3) return;
            Assert.Equal(scale * plain.Coefficients[1].Value, moved.Coefficients[1].Value, 1e-7);
            Assert.Equal(scale * plain.Coefficients[0].Value + shift, moved.Coefficients[0].Value, 1e-7);
            Assert.Equal(scale * plain.ResidualStandardDeviation, moved.ResidualStandardDeviation, 1e-9);
            Assert.Equal(plain.Rank, plain.Diagnostics().Sum(row => row.Leverage), 1e-10);
        }, iter: 200);

    private static LinearFit ReferenceFit(string item) =>
        LeastSquares.Fit(ReferenceData.Column("regression", item + ".csv", item switch { "stackloss" => "stack.loss", "cars_quadratic" => "dist", _ => "Postwt" }), ReferenceDesign(item)).GetOrThrow();

    private static RegressionDesign ReferenceDesign(string item)
    {
        double[] Column(string name) => ReferenceData.Column("regression", item + ".csv", name);
        return item switch
        {
            "stackloss" => new[] { "Air.Flow", "Water.Temp", "Acid.Conc." }.Aggregate(RegressionDesign.WithIntercept(21), (design, name) => design.Add(name, Column(name))),
            "cars_quadratic" => RegressionDesign.WithIntercept(50).Add("speed", Column("speed")).Add("speed²", [.. Column("speed").Select(speed => speed * speed)]),
            _ => RegressionDesign.WithIntercept(72).Add("Prewt", Column("Prewt")).AddFactor("Treat", ReferenceData.Text("regression", "anorexia_ancova.csv")["Treat"]),
        };
    }

    private static RegressionDesign CertifiedDesign(string item, int degree)
    {
        var table = ReferenceData.Text("nist", item + ".csv");
        var rows = table["y"].Length;
        double[] Column(string name) => ReferenceData.Column("nist", item + ".csv", name);
        if (item == "Longley") return Enumerable.Range(1, 6).Aggregate(RegressionDesign.WithIntercept(rows), (design, k) => design.Add($"x{k}", Column($"x{k}")));
        if (item == "NoInt1") return RegressionDesign.WithoutIntercept(rows).Add("x", Column("x"));
        var x = Column("x");
        double[] Power(int k) => [.. x.Select(value => Enumerable.Repeat(value, k).Aggregate(1.0, (product, factor) => product * factor))];
        return Enumerable.Range(1, degree).Aggregate(RegressionDesign.WithIntercept(rows), (design, k) => design.Add($"x^{k}", Power(k)));
    }
}
