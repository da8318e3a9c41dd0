using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>What must hold for any data: shift, scale, order, unit of a column, the same blocks however they are described.</summary>
public sealed partial class MixedModelTests
{
    private static readonly MixedModelOptions AsAsked = new() { SingularFits = SingularFits.Keep };

    private static readonly Gen<double[]> Squads =
        from seed in Gen.Int[1, 1_000_000]
        from athletes in Gen.Int[4, 9]
        select Squad(seed, athletes);

    [Fact]
    public void A_shift_of_all_times_moves_the_intercept_only() => Gen.Select(Squads, Gen.Double[-1e5, 1e5]).Sample(
        (times, shift) =>
        {
            var before = Fit(times);
            var after = Fit([.. times.Select(time => time + shift)]);
            ReferenceData.AssertClose(before.Fixed("intercept").Estimate.Value + shift, after.Fixed("intercept").Estimate.Value, 1e-8, 1e-5);
            ReferenceData.AssertClose(before.Deviance, after.Deviance, 1e-9, 1e-6);
            ReferenceData.AssertClose(before.Fixed("week").Estimate.Value, after.Fixed("week").Estimate.Value, 1e-6, 1e-6);
            ReferenceData.AssertClose(before.ResidualStandardDeviation.Value, after.ResidualStandardDeviation.Value, 1e-5);
        },
        iter: 50);

    [Fact]
    public void A_scale_of_all_times_scales_every_estimate() => Gen.Select(Squads, Gen.Double[0.01, 100]).Sample(
        (times, scale) =>
        {
            var before = Fit(times);
            var after = Fit([.. times.Select(time => time * scale)]);
            ReferenceData.AssertClose(scale * before.Fixed("week").Estimate.Value, after.Fixed("week").Estimate.Value, 1e-6, 1e-6 * scale);
            ReferenceData.AssertClose(scale * before.Fixed("week").Estimate.StandardError!.Value, after.Fixed("week").Estimate.StandardError!.Value, 1e-4);
            ReferenceData.AssertClose(scale * before.ResidualStandardDeviation.Value, after.ResidualStandardDeviation.Value, 1e-5);
            ReferenceData.AssertClose(before.Deviance + 2 * (times.Length - 2) * Math.Log(scale), after.Deviance, 1e-9, 1e-6);
        },
        iter: 50);

    [Fact]
    public void The_order_of_athletes_and_tests_does_not_matter() => Gen.Select(Squads, Gen.Int[1, 1000]).Sample(
        (times, seed) =>
        {
            var order = new SeededRandom(seed).Shuffle(Enumerable.Range(0, times.Length).ToArray());
            var before = Fit(times);
            var after = Fit(times, order);
            ReferenceData.AssertClose(before.Deviance, after.Deviance, 1e-10, 1e-7);
            ReferenceData.AssertClose(before.Fixed("week").Estimate.Value, after.Fixed("week").Estimate.Value, 1e-6, 1e-7);
            foreach (var effect in before.RandomEffects)
            {
                var same = after.RandomEffects.Single(other => other.Group == effect.Group && other.Column == effect.Column);
                ReferenceData.AssertClose(effect.Deviation, same.Deviation, 1e-4, 1e-3);
            }
        },
        iter: 30);

    [Fact]
    public void The_unit_of_a_slope_does_not_matter() => Squads.Sample(
        times =>
        {
            // Days instead of weeks: the slope is a seventh, the fit the same.
            var weeks = Fit(times);
            var days = Fit(times, scaleOfWeek: 7);
            ReferenceData.AssertClose(weeks.Fixed("week").Estimate.Value / 7, days.Fixed("week").Estimate.Value, 1e-6, 1e-8);

            // The REML deviance carries ln|X'X|, which a factor of 7 in one column raises by 2 ln 7.
            ReferenceData.AssertClose(weeks.Deviance + 2 * Math.Log(7), days.Deviance, 1e-10, 1e-6);
            Assert.Equal(weeks.IsSingular, days.IsSingular);
        },
        iter: 30);

    [Fact]
    public void A_nested_term_with_one_group_each_changes_nothing_but_the_description() => Squads.Sample(
        times =>
        {
            // Two terms by the same labels share one variance between them: the deviance is that of one term.
            var groups = Groups(times);
            var response = new DesignColumn("total", times);
            var one = MixedModel.Fit(new MixedDesign(response, [DesignColumn.Intercept(times.Length)], [RandomTerm.Intercept("athlete", groups)]), AsAsked).GetOrThrow();
            var two = MixedModel.Fit(new MixedDesign(response, [DesignColumn.Intercept(times.Length)], [RandomTerm.Intercept("athlete", groups), RandomTerm.Intercept("boxer", groups)]), AsAsked).GetOrThrow();
            ReferenceData.AssertClose(one.Deviance, two.Deviance, 1e-10, 1e-6);
            var total = Math.Sqrt(two.VarianceComponents.Sum(component => Math.Pow(component.StandardDeviation.Value, 2)));
            ReferenceData.AssertClose(one.VarianceComponents[0].StandardDeviation.Value, total, 1e-3, 1e-3);
        },
        iter: 20);

    [Fact]
    public void A_large_mean_with_a_tiny_spread_is_fitted_like_a_small_one()
    {
        // The eight athletes in thousandths, on top of a million: the same digits, the same fit.
        var small = MixedModel.Fit(EightAthletesBy(slope: false)).GetOrThrow();
        var design = EightAthletesBy(slope: false);
        var large = MixedModel.Fit(new MixedDesign(new DesignColumn("total", design.Response.Values.Select(value => 1e6 + value / 1000).ToArray()), design.FixedEffects, design.RandomTerms)).GetOrThrow();
        ReferenceData.AssertClose(small.ResidualStandardDeviation.Value / 1000, large.ResidualStandardDeviation.Value, 1e-6);
        ReferenceData.AssertClose(small.Fixed("week").Estimate.Value / 1000, large.Fixed("week").Estimate.Value, 1e-6);
        ReferenceData.AssertClose(small.VarianceComponents[0].StandardDeviation.Value / 1000, large.VarianceComponents[0].StandardDeviation.Value, 1e-6);
    }

    /// <summary>Athletes with five to eight tests each, from a seed.</summary>
    private static double[] Squad(int seed, int athletes)
    {
        var random = new SeededRandom(seed);
        return [.. Enumerable.Range(0, athletes).SelectMany(_ =>
        {
            var (level, trend) = (320 + 20 * random.NextNormal(), -0.5 + 0.8 * random.NextNormal());
            return Enumerable.Range(0, 6).Select(week => level + trend * week + 2 * random.NextNormal()).ToArray();
        })];
    }

    private static string[] Groups(double[] times) => [.. times.Select((_, k) => $"A{k / 6}")];

    private static MixedFit Fit(double[] times, IReadOnlyList<int>? order = null, double scaleOfWeek = 1)
    {
        order ??= Enumerable.Range(0, times.Length).ToArray();
        var groups = Groups(times);
        var week = new DesignColumn("week", [.. order.Select(k => scaleOfWeek * (k % 6 - 2.5))]);
        return MixedModel.Fit(
            new MixedDesign(
                new DesignColumn("total", [.. order.Select(k => times[k])]),
                [DesignColumn.Intercept(times.Length), week],
                [RandomTerm.InterceptAndSlope("athlete", [.. order.Select(k => groups[k])], week)]),
            AsAsked).GetOrThrow();
    }
}
