using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Reliability;

public sealed class NumberOfTestsTests
{
    private static readonly TypicalErrorResult Noise = TypicalError.Fit(WorkedData.EightAthletes, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    [Fact]
    public void The_number_of_tests_brings_the_noise_down_to_what_matters()
    {
        // Hand arithmetic: (2.5502713 / 2)² = 1.626, so 2 tests; 2.5502713 √(1 + 1/3) = 2.944800.
        Assert.Equal(2, NumberOfTests.Needed(Noise, SmallestWorthwhileChange.Entered(new Seconds(2))).Value);
        Assert.Equal(1, NumberOfTests.Needed(Noise, SmallestWorthwhileChange.Entered(new Seconds(5))).Value);
        Assert.Equal(2.944800, NumberOfTests.ErrorOfChange(Noise, 3, 1).Value, 5e-7);
        Assert.Equal(2.5502713 / 2, NumberOfTests.ErrorOfMean(Noise, 4).Value, 5e-8);
    }

    [Fact]
    public void It_says_how_often_a_mean_comes_so_close_and_how_many_tests_make_that_often_enough()
    {
        // R 4.2.2: 2 * pt(3.6 * sqrt(2) / 3.91, 214) - 1; (qt(.95, 214) * 3.91 / 3.6)^2 = 3.219, so 4 tests.
        var noise = TypicalError.Entered(new Seconds(3.91), 214, "entered");
        var worthwhile = SmallestWorthwhileChange.Entered(new Seconds(3.6));
        Assert.Equal(0.805714382652, NumberOfTests.ChanceWithin(noise, worthwhile, 2).Value, 1e-9);
        Assert.Equal(4, NumberOfTests.NeededWithin(noise, worthwhile).Value);
    }

    [Fact]
    public void A_whole_ratio_asks_for_no_further_test() =>
        Assert.Equal(9, NumberOfTests.Needed(TypicalError.Entered(new Seconds(0.3), 20, "hand-made"), SmallestWorthwhileChange.Entered(new Seconds(0.1))).Value);

    [Fact]
    public void The_reliability_of_a_mean_follows_Spearman_and_Brown() =>
        // Hand arithmetic: 3 · 0.6 / (1 + 2 · 0.6) = 0.8181818.
        Assert.Equal(1.8 / 2.2, NumberOfTests.ReliabilityOfMean(new Estimate(0.6, Unit.None, 10, "ICC(C,1)"), 3).Value, 1e-12);

    [Fact]
    public void The_minimal_detectable_change_matches_R()
    {
        // R 4.2.2: qt(.975, 21) * sqrt(2) * 2.5502713, and with 1.96 and 1.645.
        double Change(DetectionFactor factor, ConfidenceLevel level) => MinimalDetectableChange.Fit(Noise, new MinimalDetectableChangeOptions { Factor = factor, Level = level }).Value;
        Assert.Equal(7.500394, Change(DetectionFactor.StudentT, ConfidenceLevel.NinetyFive), 5e-7);
        Assert.Equal(7.068992, Change(DetectionFactor.Conventional, ConfidenceLevel.NinetyFive), 5e-7);
        Assert.Equal(5.932904, Change(DetectionFactor.Conventional, ConfidenceLevel.Ninety), 5e-7);
    }

    [Fact]
    public void Units_that_differ_are_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => NumberOfTests.Needed(TypicalError.Entered(new Seconds(2), 20, "hand-made"), SmallestWorthwhileChange.Entered(new Percent(2))));
}
