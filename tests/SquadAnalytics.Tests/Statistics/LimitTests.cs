using CsCheck;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

/// <summary>What takes time or memory faster than its data grow: it answers up to its limit and refuses beyond. The limits are ours, no source.</summary>
public sealed class LimitTests
{
    private static readonly Dictionary<string, (int Most, string Noun, Func<int, NotEstimable?> Refusal)> Limits = new()
    {
        ["the Theil-Sen slope"] = (3_000, "points", n => TheilSen.Fit(Ramp(n), Sawtooth(n), ConfidenceLevel.Ninety).Refusal),
        ["the rank-sum test"] = (200, "numbers in both samples together", n => RankSumTest.Fit(Sawtooth(100), Ramp(n - 100), ConfidenceLevel.Ninety).Refusal),
        ["the Shapiro-Wilk test"] = (5_000, "numbers", n => ShapiroWilk.Fit(Sawtooth(n)).Refusal),
        ["the breaks of the mean"] = (5_000, "observations", n => MeanShifts.Find(Sawtooth(n), new MeanShiftOptions { MaximumBreaks = 1 }).Refusal),
        ["the bent line"] = (2_000, "different x", n => BrokenLine.Fit([.. Ramp(n), 0, 1], [.. Sawtooth(n), 3, 4]).Refusal),
        ["the jackknife"] = (5_000, "observations", n => Jackknife.Of(Sawtooth(n), sample => sample[0]).Refusal),
        ["the comparison of groups"] = (100, "groups", n => PairwiseComparisons.OfGroups(Sawtooth(3 * n), Names(n, 3), PairwiseAdjustment.Holm, ConfidenceLevel.Ninety).Refusal),
        ["the baseline-adjusted comparison"] = (100, "groups", n => Ancova.Estimate(Sawtooth(3 * n), Ramp(3 * n), Names(n, 3)).Refusal),
        ["the two-way analysis of variance"] = (301, "rows and columns together", n => TwoWayAnova.Fit(Sawtooth(2 * (n - 2)), Names(n - 2, 2), Names(2, n - 2)).Refusal),
        ["ranks"] = (2_000, "athletes", n => SquadAnalytics.Standing.Ranks.Fit([.. Ramp(n).Select(seconds => new SquadAnalytics.Standing.AthleteLevel($"a{seconds}", new Estimate(300 + seconds, Unit.Seconds, 3, "hand-made") { StandardError = 2 }))], new SquadAnalytics.Standing.RankOptions { Draws = 1_000 }).Refusal),
        ["the typical error by a mixed model"] = (300, "tests", n => TypicalError.OfMixedModel(Squad((1, n), (2, n), (3, n)), new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).Refusal),
        ["the profile model"] = (300, "eligible sessions of one athlete", n => ProfileModel.Fit(Squad((1, n), (2, 4)), new ProfileModelOptions(2) { Selection = SelectionOptions.KeepAll }).Refusal),
    };

    public static TheoryData<string> Measures => [.. Limits.Keys];

    [Theory]
    [MemberData(nameof(Measures))]
    public void A_measure_is_given_up_to_its_limit_and_refused_beyond(string measure)
    {
        var (most, noun, refusal) = Limits[measure];
        Assert.True(refusal(most) is null, $"{refusal(most)}");
        Assert.Equal(Refusal.TooManyObservations, refusal(most + 1)!.Reason);
        Assert.Equal($"Too much data for {measure}: needs at most {most} {noun}, has {most + 1} {noun}.", refusal(most + 1)!.ToString());
    }

    [Fact]
    public void The_signed_rank_distribution_is_counted_up_to_1000()
    {
        Assert.Equal(0.5, SignedRankDistribution.Cdf(1_000 * 1_001 / 4, 1_000), 1e-4);
        Assert.Throws<ArgumentOutOfRangeException>(() => SignedRankDistribution.Cdf(0, 1_001));
    }

    [Fact]
    public void A_design_takes_up_to_300_columns()
    {
        var design = RegressionDesign.WithIntercept(300).AddFactor("athlete", Names(300, 1));
        Assert.Equal(300, design.ColumnNames.Count);
        Assert.Throws<ArgumentException>(() => design.Add("week", Ramp(300)));
    }

    // The definition: every pair of observations compared.
    [Fact]
    public void Kendalls_pairs_counted_by_sorting_are_those_of_the_definition() =>
        Gen.Select(Gen.Int[-5, 5].Array[12], Gen.Int[-5, 5].Array[12]).Sample((x, y) =>
        {
            if (x.Distinct().Count() == 1 || y.Distinct().Count() == 1) return;
            int[] signs = [.. from i in Enumerable.Range(0, 12) from j in Enumerable.Range(i + 1, 11 - i) select Math.Sign(x[j] - x[i]) * Math.Sign(y[j] - y[i])];
            int Untied(int[] values) => (from i in Enumerable.Range(0, 12) from j in Enumerable.Range(i + 1, 11 - i) where values[i] != values[j] select 1).Sum();
            var got = KendallCorrelation.Fit([.. x.Select(Convert.ToDouble)], [.. y.Select(Convert.ToDouble)]).GetOrThrow();
            Assert.Equal(signs.Sum(), got.S);
            Assert.Equal(signs.Count(sign => sign > 0), got.Concordant);
            Assert.Equal(signs.Sum() / Math.Sqrt((double)Untied(x) * Untied(y)), got.Tau, 1e-14);
        }, iter: 200);

    // Equal ranks correlate to 1; comparing all pairs of these numbers would take minutes.
    [Fact]
    public void Rank_correlations_take_a_hundred_thousand_numbers_with_ties()
    {
        var many = Sawtooth(100_000);
        Assert.Equal(1, KendallCorrelation.Fit(many, many).GetOrThrow().Tau, 1e-12);
        Assert.Equal(1, SpearmanCorrelation.Fit(many, many).GetOrThrow().Rho, 1e-12);
    }

    private static double[] Ramp(int count) => [.. Enumerable.Range(0, count).Select(k => (double)k)];

    private static double[] Sawtooth(int count) => [.. Enumerable.Range(0, count).Select(k => (k * 37 % 11) + 0.01 * (k % 7))];

    /// <summary>Each of some names in turn, all of them as often as said.</summary>
    private static string[] Names(int names, int times) => [.. Enumerable.Range(0, names * times).Select(k => $"n{k % names:0000}")];

    /// <summary>Sessions of three sets, one a week.</summary>
    private static IReadOnlyList<Session> Squad(params ReadOnlySpan<(int Athlete, int Tests)> athletes)
    {
        var protocol = new Protocol("p", "Circuit", [new Station("Rope", 1)], 3, new Seconds(120));
        var sessions = new List<Session>();
        foreach (var (athlete, tests) in athletes)
        {
            for (var test = 0; test < tests; test++)
            {
                var level = 60 + athlete + (test * (36 + athlete) % 11 / 10.0);
                sessions.Add(Session.FromTimes($"{athlete}-{test}", $"a{athlete}", new DateOnly(2030, 1, 1).AddDays(7 * test), protocol, [level, level + (test % 3 / 10.0), level + (test % 5 / 10.0)]));
            }
        }

        return sessions;
    }
}
