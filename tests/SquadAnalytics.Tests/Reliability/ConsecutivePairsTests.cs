using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Reliability;

public sealed class ConsecutivePairsTests
{
    private static readonly TypicalErrorOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void Change_and_noise_of_consecutive_tests_match_R()
    {
        // R 4.2.2: per pair of tests mean(d), sd(d) / sqrt(2); sqrt(7 * te^2 / qchisq(c(.95, .05), 7)); pooled sqrt(sum(7 * te^2) / 21).
        var result = ConsecutivePairs.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        double[] changes = [-2.1, -0.6, -3.3875], errors = [3.1643099, 3.2745774, 2.4938317];
        for (var pair = 0; pair < 3; pair++)
        {
            Assert.Equal(changes[pair], result.Pairs[pair].MeanChange.GetOrThrow().Value, 1e-9);
            Assert.Equal(errors[pair], result.Pairs[pair].TypicalError.GetOrThrow().Value, 5e-8);
        }

        Assert.Equal(2.232159, result.Pairs[0].TypicalError.GetOrThrow().Lower!.Value, 5e-7);
        Assert.Equal(5.686742, result.Pairs[0].TypicalError.GetOrThrow().Upper!.Value, 5e-7);
        Assert.Equal(2.9974940, result.Pooled.Value, 5e-8);
        Assert.Null(result.Pooled.Interval);
    }

    [Theory]
    [InlineData("weir_a")]
    [InlineData("peakflow_wright")]
    public void The_change_in_the_mean_of_published_pairs_matches_R(string item)
    {
        var expected = ReferenceData.Values("reliability", item, "change_in_mean");
        var change = ConsecutivePairs.Fit(ReferenceTable.Sessions(ReferenceTable.Load(item)), All with { Level = ConfidenceLevel.NinetyFive }).GetOrThrow().Pairs[0].MeanChange.GetOrThrow();
        ReferenceData.AssertClose(expected.GetProperty("mean").GetDouble(), change.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("lower95").GetDouble(), change.Lower!.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("upper95").GetDouble(), change.Upper!.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("p").GetDouble(), change.PValue!.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("df").GetDouble(), change.DegreesOfFreedom!.Value, 1e-9);
    }

    [Fact]
    public void A_pair_with_two_athletes_is_refused_in_its_row()
    {
        var result = ConsecutivePairs.Fit(WorkedData.Weekly([300, 301, 302], [310, 312, 313], [320, 321, double.NaN]), All).GetOrThrow();
        Assert.True(result.Pairs[0].MeanChange.IsEstimated);
        Assert.Equal(Refusal.TooFewPairs, result.Pairs[1].TypicalError.Refusal!.Reason);
        Assert.Equal(Refusal.TooFewPairs, ConsecutivePairs.Fit(WorkedData.Weekly([300, 301], [310, 312]), All).Refusal!.Reason);
    }
}
