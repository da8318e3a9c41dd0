using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>Small invented squads, fitted in R 4.2.2 with lme4 and lmerTest, and what is refused or simplified.</summary>
public sealed partial class MixedModelTests
{
    private static readonly double[][] EightAthletes =
    [
        [329.0, 325.2, 327.1, 322.9], [298.4, 301.0, 296.2, 294.8], [356.1, 349.5, 352.0, 345.3], [312.7, 309.9, 313.5, 306.4],
        [341.0, 344.6, 337.2, 338.8], [285.3, 283.1, 286.0, 281.7], [367.9, 358.8, 361.4, 355.0], [320.5, 322.0, 315.9, 317.3],
    ];

    private static readonly double[][] FirstBlock = [[330.1, 327.4, 329.0], [301.2, 299.8, 300.5, 298.9], [352.6, 349.9], [314.0, 311.2, 313.3], [341.8, 343.0, 340.1, 339.5], [287.0, 285.1, 286.6], [362.0, 358.3, 360.9]];

    private static readonly double[][] SecondBlock = [[322.5, 324.0, 321.1, 323.2], [297.0, 295.2], [340.7, 343.9, 341.5], [309.8, 307.1, 308.2, 306.6], [338.0, 336.4, 337.7], [284.9, 283.0, 285.5, 282.6], [349.8, 351.6]];

    [Fact]
    public void A_random_level_of_eight_athletes_agrees_with_R()
    {
        // R 4.2.2: lmer(total ~ week + (1 | athlete)), weeks 0 to 3: 326.47000, -1.88625 (SE 0.40007), SDs 26.2601, 2.5303, REML log-likelihood -95.2333.
        var fit = MixedModel.Fit(EightAthletesBy(slope: false)).GetOrThrow();
        ReferenceData.AssertClose(326.47, fit.Fixed("intercept").Estimate.Value, 0, 5e-6);
        ReferenceData.AssertClose(-1.88625, fit.Fixed("week").Estimate.Value, 0, 5e-6);
        ReferenceData.AssertClose(0.40007, fit.Fixed("week").Estimate.StandardError!.Value, 0, 5e-6);
        ReferenceData.AssertClose(26.2601, fit.VarianceComponents[0].StandardDeviation.Value, 0, 5e-5);
        ReferenceData.AssertClose(2.5303, fit.ResidualStandardDeviation.Value, 0, 5e-5);
        ReferenceData.AssertClose(-95.2333, fit.LogLikelihood, 0, 5e-5);
    }

    [Fact]
    public void A_slope_that_is_tied_to_the_level_is_simplified_and_the_notes_say_how()
    {
        // R 4.2.2: lmer(total ~ week + (week | athlete)) ends singular, correlation -1.
        var kept = MixedModel.Fit(EightAthletesBy(slope: true), new MixedModelOptions { SingularFits = SingularFits.Keep }).GetOrThrow();
        Assert.True(kept.IsSingular);
        ReferenceData.AssertClose(-1, kept.Correlations.Single().Correlation!.Value, 0, 1e-4);

        var fit = MixedModel.Fit(EightAthletesBy(slope: true)).GetOrThrow();
        Assert.False(fit.IsSingular);
        Assert.Empty(fit.Correlations);
        Assert.Contains("Singular fit: refitted without the correlation of intercept and week between athlete.", fit.Notes);
    }

    [Fact]
    public void A_slope_without_variance_is_left_out_and_the_notes_say_so()
    {
        // Made so that all athletes share one slope exactly and scatter by the same pattern: no slope variance can be seen.
        double[] scatter = [0.3, -0.5, 0.4, -0.2, 0.1, -0.1];
        var (groups, weeks, seconds) = (new List<string>(), new List<double>(), new List<double>());
        for (var a = 0; a < 8; a++)
        {
            for (var w = 0; w < 6; w++)
            {
                groups.Add($"A{a}");
                weeks.Add(w - 2.5);
                seconds.Add(300 + 7 * a - 0.8 * w + (a % 2 == 0 ? scatter[w] : scatter[(w + 3) % 6]));
            }
        }

        var week = new DesignColumn("week", weeks, Unit.SecondsPerWeek);
        var fit = MixedModel.Fit(new MixedDesign(new DesignColumn("total", seconds, Unit.Seconds), [DesignColumn.Intercept(seconds.Count, Unit.Seconds), week], [RandomTerm.InterceptAndSlope("athlete", groups, week)])).GetOrThrow();
        Assert.Equal("intercept", fit.VarianceComponents.Single().Column);
        Assert.Contains("Singular fit: refitted without a random week between athlete, which showed no variance.", fit.Notes);
    }

    [Fact]
    public void Two_blocks_with_athletes_who_differ_in_their_change_agree_with_R()
    {
        // R 4.2.2: lmer(total ~ block + (block | athlete)), lmerTest: -5.632235, SE 1.055659, df 5.80; SDs 27.272, 2.551, correlation -0.899, residual 1.38963.
        var fit = MixedModel.Fit(TwoBlocks(slope: true)).GetOrThrow();
        var change = fit.Fixed("block").Estimate;
        ReferenceData.AssertClose(-5.632235, change.Value, 1e-4);
        ReferenceData.AssertClose(1.055659, change.StandardError!.Value, 1e-4);
        ReferenceData.AssertClose(5.80, change.DegreesOfFreedom!.Value, 0, 0.005);
        ReferenceData.AssertClose(27.272, fit.VarianceComponents[0].StandardDeviation.Value, 1e-4);
        ReferenceData.AssertClose(2.551, fit.VarianceComponents[1].StandardDeviation.Value, 0, 5e-4);
        ReferenceData.AssertClose(-0.899, fit.Correlations.Single().Correlation!.Value, 0, 5e-4);
        ReferenceData.AssertClose(1.38963, fit.ResidualStandardDeviation.Value, 1e-4);

        // R 4.2.2: without the random block the SE is 0.569729.
        ReferenceData.AssertClose(0.569729, MixedModel.Fit(TwoBlocks(slope: false)).GetOrThrow().Fixed("block").Estimate.StandardError!.Value, 1e-4);
    }

    [Fact]
    public void A_prediction_of_a_balanced_squad_is_the_closed_form()
    {
        // Balanced random intercepts: û_i = kψ/(kψ + σ²) (ȳ_i - ȳ), from the model's own variances; Robinson (1991), Stat Sci 6:15-32 (from memory).
        var fit = MixedModel.Fit(EightAthletesBy(slope: false)).GetOrThrow();
        var psi = Math.Pow(fit.VarianceComponents[0].StandardDeviation.Value, 2);
        var sigma2 = Math.Pow(fit.ResidualStandardDeviation.Value, 2);
        var all = EightAthletes.SelectMany(row => row).Average();
        for (var a = 0; a < EightAthletes.Length; a++)
            ReferenceData.AssertClose(4 * psi / (4 * psi + sigma2) * (EightAthletes[a].Average() - all), fit.RandomEffects.Single(effect => effect.Group == $"B{a + 1}").Deviation, 1e-8);

        // R 4.2.2: ranef of the first and the seventh athlete.
        ReferenceData.AssertClose(2.4037958, fit.RandomEffects[0].Deviation, 1e-6);
        ReferenceData.AssertClose(37.0483860, fit.RandomEffects[6].Deviation, 1e-6);
    }

    [Fact]
    public void A_contrast_is_the_sum_of_its_parts()
    {
        var fit = MixedModel.Fit(EightAthletesBy(slope: false)).GetOrThrow();
        var end = fit.Contrast("week 3", [1, 3], Unit.Seconds);
        ReferenceData.AssertClose(fit.Fixed("intercept").Estimate.Value + 3 * fit.Fixed("week").Estimate.Value, end.Value, 1e-12);
        ReferenceData.AssertClose(fit.FixedCovariance[0][0] + 6 * fit.FixedCovariance[0][1] + 9 * fit.FixedCovariance[1][1], end.StandardError!.Value * end.StandardError.Value, 1e-10);
        var single = fit.Test([[0, 1]]);
        var t = fit.Fixed("week").Estimate;
        ReferenceData.AssertClose(Math.Pow(t.Value / t.StandardError!.Value, 2), single.F, 1e-9);
        ReferenceData.AssertClose(t.PValue!.Value, single.PValue, 1e-6);
        Assert.Throws<ArgumentException>(() => fit.Contrast("short", [1]));
        Assert.Throws<ArgumentException>(() => fit.Contrast("nothing", [0, 0]));
        Assert.Throws<ArgumentException>(() => fit.Fixed("month"));
    }

    [Fact]
    public void One_group_is_refused()
    {
        var design = new MixedDesign(new DesignColumn("y", [1, 2, 4, 3]), [DesignColumn.Intercept(4)], [RandomTerm.Intercept("athlete", ["A", "A", "A", "A"])]);
        Assert.Equal("Not enough data for the mixed model: needs 2 groups in each random term, has 1 groups in each random term.", MixedModel.Fit(design).ToString());
    }

    [Fact]
    public void One_observation_for_each_group_is_refused()
    {
        var design = new MixedDesign(new DesignColumn("y", [1, 2, 4]), [DesignColumn.Intercept(3)], [RandomTerm.Intercept("athlete", ["A", "B", "C"])]);
        Assert.Equal(Refusal.WeaklyIdentified, MixedModel.Fit(design).Refusal!.Reason);
    }

    [Fact]
    public void Columns_that_repeat_each_other_are_refused()
    {
        var week = new DesignColumn("week", [0, 1, 2, 0, 1, 2]);
        var design = new MixedDesign(new DesignColumn("y", [1, 2, 4, 3, 5, 4]), [DesignColumn.Intercept(6), week, new DesignColumn("session", [1, 2, 3, 1, 2, 3])], [RandomTerm.Intercept("athlete", ["A", "A", "A", "B", "B", "B"])]);
        Assert.Equal("Not enough data for the mixed model: needs 3 independent fixed-effect columns, has 2 independent columns.", MixedModel.Fit(design).ToString());
    }

    [Fact]
    public void A_response_without_scatter_is_refused()
    {
        var design = new MixedDesign(new DesignColumn("y", [5, 5, 5, 5]), [DesignColumn.Intercept(4)], [RandomTerm.Intercept("athlete", ["A", "A", "B", "B"])]);
        Assert.Equal(Refusal.ZeroVariance, MixedModel.Fit(design).Refusal!.Reason);
    }

    [Fact]
    public void Observations_without_scatter_within_groups_are_refused()
    {
        string[] groups = ["A", "A", "B", "B", "C", "C"];
        var one = new MixedDesign(new DesignColumn("y", [1, 1, 2, 2, 4, 4]), [DesignColumn.Intercept(6)], [RandomTerm.Intercept("athlete", groups)]);
        Assert.Equal("Not enough data for the mixed model: needs observations that scatter within groups, has none.", MixedModel.Fit(one).ToString());
        var two = new MixedDesign(one.Response, one.FixedEffects, [RandomTerm.Intercept("athlete", groups), RandomTerm.Intercept("half", ["x", "x", "x", "x", "y", "y"])]);
        Assert.Equal(Refusal.ZeroVariance, MixedModel.Fit(two).Refusal!.Reason);
    }

    [Fact]
    public void Kenward_and_Roger_need_REML() => Assert.Throws<ArgumentException>(() => MixedModel.Fit(
        EightAthletesBy(slope: false), new MixedModelOptions { Criterion = MixedCriterion.MaximumLikelihood, DegreesOfFreedom = FixedEffectDegreesOfFreedom.KenwardRoger }));

    [Fact]
    public void Crossed_terms_that_connect_too_many_groups_are_refused()
    {
        // A chain: each observation shares one group with its neighbour, so that 3,000 groups hang together.
        var rows = Enumerable.Range(0, 3000).ToArray();
        var design = new MixedDesign(
            new DesignColumn("y", [.. rows.Select(row => (double)(row % 7))]),
            [DesignColumn.Intercept(rows.Length)],
            [RandomTerm.Intercept("first", [.. rows.Select(row => $"F{row / 2}")]), RandomTerm.Intercept("second", [.. rows.Select(row => $"S{(row + 1) / 2 % 1500}")])]);
        var refusal = MixedModel.Fit(design).Refusal!;
        Assert.Equal(Refusal.TooManyObservations, refusal.Reason);
        Assert.Equal("Too much data for the mixed model: needs at most 2500 random effects that share observations, has 3000 random effects that share observations.", refusal.ToString());
    }

    [Fact]
    public void Lists_that_do_not_fit_together_are_a_caller_mistake()
    {
        Assert.Throws<ArgumentException>(() => RandomTerm.InterceptAndSlope("athlete", ["A", "B"], new DesignColumn("week", [1, 2, 3])));
        Assert.Throws<ArgumentException>(() => new MixedDesign(new DesignColumn("y", [1, 2]), [DesignColumn.Intercept(3)], [RandomTerm.Intercept("athlete", ["A", "B"])]));
        Assert.Throws<ArgumentException>(() => new MixedDesign(new DesignColumn("y", [1, 2]), [DesignColumn.Intercept(2), DesignColumn.Intercept(2)], [RandomTerm.Intercept("athlete", ["A", "B"])]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DesignColumn("y", [1, double.NaN]));
    }

    internal static MixedDesign EightAthletesBy(bool slope)
    {
        var groups = EightAthletes.SelectMany((row, a) => row.Select(_ => $"B{a + 1}")).ToArray();
        var week = new DesignColumn("week", EightAthletes.SelectMany(row => row.Select((_, w) => (double)w)).ToArray(), Unit.SecondsPerWeek);
        var total = new DesignColumn("total", EightAthletes.SelectMany(row => row).ToArray(), Unit.Seconds);
        return new MixedDesign(total, [DesignColumn.Intercept(groups.Length, Unit.Seconds), week], [slope ? RandomTerm.InterceptAndSlope("athlete", groups, week) : RandomTerm.Intercept("athlete", groups)]);
    }

    private static MixedDesign TwoBlocks(bool slope)
    {
        var rows = FirstBlock.SelectMany((row, a) => row.Select(total => (Athlete: $"A{a}", Block: 0.0, Total: total)))
            .Concat(SecondBlock.SelectMany((row, a) => row.Select(total => (Athlete: $"A{a}", Block: 1.0, Total: total)))).ToArray();
        string[] groups = [.. rows.Select(row => row.Athlete)];
        var block = new DesignColumn("block", [.. rows.Select(row => row.Block)], Unit.Seconds);
        return new MixedDesign(
            new DesignColumn("total", [.. rows.Select(row => row.Total)], Unit.Seconds),
            [DesignColumn.Intercept(rows.Length, Unit.Seconds), block],
            [slope ? RandomTerm.InterceptAndSlope("athlete", groups, block) : RandomTerm.Intercept("athlete", groups)]);
    }
}
