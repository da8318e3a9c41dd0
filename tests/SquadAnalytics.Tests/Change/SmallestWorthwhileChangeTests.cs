using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Change;

public sealed class SmallestWorthwhileChangeTests
{
    private static readonly IReadOnlyList<Session> Squad = WorkedData.EightAthletes;
    private static readonly TypicalErrorResult Noise = TypicalError.Fit(Squad, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    [Fact]
    public void A_tenth_of_a_fifty_second_band_is_five_seconds()
    {
        // Hand arithmetic.
        var band = new PerformanceBand("steady", new Seconds(300), new Seconds(350));
        var worthwhile = SmallestWorthwhileChange.FromBand(band);
        Assert.Equal(5, worthwhile.Estimate.Value, 1e-12);
        Assert.Contains(worthwhile.Estimate.Notes, note => note.Contains("house value", StringComparison.Ordinal));
        Assert.Empty(SmallestWorthwhileChange.FromBand(band, new Percent(20)).Estimate.Notes);
    }

    [Fact]
    public void The_fastest_band_of_the_day_gives_it_and_a_protocol_without_bands_is_refused()
    {
        // Hand arithmetic: a tenth of 40 s, of 50 s from June on.
        var day = new DateOnly(2031, 3, 4);
        var protocol = new Protocol("quay", "Quay", [], 5, new Seconds(120))
        {
            Bands = [new("slow", new Seconds(300), new Seconds(400)), new("fast", new Seconds(260), new Seconds(300)), new("new fast", new Seconds(240), new Seconds(290), new DateOnly(2031, 6, 1))],
        };
        Assert.Equal(4, SmallestWorthwhileChange.FromBand(protocol, day).GetOrThrow().Estimate.Value, 1e-12);
        Assert.Equal(5, SmallestWorthwhileChange.FromBand(protocol, new DateOnly(2031, 7, 1)).GetOrThrow().Estimate.Value, 1e-12);
        Assert.Equal("Not enough data for the smallest worthwhile change: needs a band of session totals, has none: Quay has no bands on 2031-03-04.", SmallestWorthwhileChange.FromBand(protocol with { Bands = [] }, day).ToString());
    }

    [Fact]
    public void A_fifth_of_the_spread_between_athletes_matches_R()
    {
        // R 4.2.2: 0.2 * sqrt((MSB - MSE) / 4) of anova(lm(total ~ athlete + test)).
        var reliability = IntraclassCorrelation.Fit(Squad, new IntraclassCorrelationOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var worthwhile = SmallestWorthwhileChange.FromSquadSpread(reliability).GetOrThrow();
        Assert.Equal(5.251928, worthwhile.Estimate.Value, 5e-7);
        Assert.Contains(worthwhile.Estimate.Notes, note => note.Contains("mean effect", StringComparison.Ordinal));
        Assert.Contains(worthwhile.Estimate.Notes, note => note.Contains("8 athletes only", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("weir_a")]
    [InlineData("shrout_fleiss")]
    [InlineData("generated_12x4")]
    public void A_fifth_of_the_spread_in_published_tables_matches_R(string item)
    {
        var reliability = IntraclassCorrelation.FitTable(Reliability.ReferenceTable.Load(item), ConfidenceLevel.NinetyFive).GetOrThrow();
        var expected = ReferenceData.Values("reliability", item, "typical_error_all_trials").GetProperty("smallest_worthwhile_change_0.2_between").GetDouble();
        ReferenceData.AssertClose(expected, SmallestWorthwhileChange.FromSquadSpread(reliability).GetOrThrow().Estimate.Value, 1e-9);
    }

    [Fact]
    public void On_one_test_day_the_noise_is_taken_out_of_the_spread()
    {
        // R 4.2.2: with the raw SD of test 1 0.2 sd = 5.616282; without noise 0.2 sqrt(28.08141² - 2.5502713²).
        double[] first = [329.0, 298.4, 356.1, 312.7, 341.0, 285.3, 367.9, 320.5];
        Assert.Equal(5.616282, 0.2 * Descriptive.StandardDeviation(first), 5e-7);
        Assert.Equal(0.2 * Math.Sqrt(Math.Pow(5.616282 / 0.2, 2) - 2.5502713 * 2.5502713), SmallestWorthwhileChange.FromTestDay(first, Noise).GetOrThrow().Estimate.Value, 1e-6);
        Assert.Equal(Refusal.TooFewAthletes, SmallestWorthwhileChange.FromTestDay([300, 310, 320, 330], Noise).Refusal!.Reason);
        Assert.Equal(Refusal.NegativeVarianceComponent, SmallestWorthwhileChange.FromTestDay([300, 301, 300, 301, 300], Noise).Refusal!.Reason);
    }

    [Fact]
    public void The_variation_between_competitions_must_be_a_published_one()
    {
        Assert.Equal(Refusal.NotComparable, SmallestWorthwhileChange.FromCompetitions(null).Refusal!.Reason);
        Assert.Equal(0.45, SmallestWorthwhileChange.FromCompetitions(new Percent(1.5)).GetOrThrow().Estimate.Value, 1e-12);
    }

    [Theory]
    [InlineData(5, 0.51, NoiseWord.Good)]
    [InlineData(2, 1.28, NoiseWord.UsableWithRepeatedTests)]
    [InlineData(1, 2.55, NoiseWord.TooNoisyForSingleAthletes)]
    public void Signal_and_noise_are_compared_in_words(double seconds, double ratio, NoiseWord word)
    {
        // Hand arithmetic: 2.5502713 / S.
        var result = SignalAndNoise.Summarize(Noise, SmallestWorthwhileChange.Entered(new Seconds(seconds)));
        Assert.Equal(ratio, result.Ratio.Value, 5e-3);
        Assert.Equal(word, result.Word);
    }

    [Fact]
    public void A_percentage_is_compared_with_the_noise_in_percent() =>
        Assert.Equal(0.752654 / 1.5, SignalAndNoise.Summarize(Noise, SmallestWorthwhileChange.Entered(new Percent(1.5))).Ratio.Value, 5e-7);

    [Fact]
    public void A_smallest_worthwhile_change_of_zero_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallestWorthwhileChange.Entered(new Seconds(0)));
}
