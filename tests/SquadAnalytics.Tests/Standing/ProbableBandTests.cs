using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Standing;

public sealed class ProbableBandTests
{
    // Common practice, no source: totals of five sets on a 120-second start interval.
    private static readonly Protocol Banded = new("banded", "Banded circuit", WorkedData.Circuit.Stations, 5, new Seconds(120))
    {
        Bands = [new PerformanceBand("quick", new Seconds(250), new Seconds(300)), new PerformanceBand("steady", new Seconds(300), new Seconds(350)), new PerformanceBand("building", new Seconds(350), new Seconds(400))],
    };

    private static readonly TypicalErrorResult Noise = TypicalError.Fit(WorkedData.EightAthletes, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    [Theory]
    [InlineData(346, 0.934140)]
    [InlineData(348, 0.779169)]
    public void The_chance_of_being_under_an_edge_matches_R(double total, double chance)
    {
        // R 4.2.2: pt((350 - total) / 2.5502713, 21).
        var result = Fit(total);
        Assert.Equal(chance, result.Chances.Where(band => band.Name is "steady" or "quick").Sum(band => band.Chance.Value), 5e-7);
        Assert.Equal(1, result.Chances.Sum(band => band.Chance.Value), 1e-12);
    }

    [Fact]
    public void A_new_band_is_announced_when_it_is_probable()
    {
        // Hand arithmetic on the chances above: 346 s has 0.93, 348 s has 0.78.
        Assert.Equal(BandStanding.Changed, Fit(354, 346).Standing);
        var line = Fit(354, 348);
        Assert.Equal(BandStanding.OnTheLine, line.Standing);
        Assert.Equal("building", line.Announced);
        Assert.Equal("steady", line.Observed);
    }

    [Fact]
    public void Two_tests_in_a_row_settle_a_band()
    {
        Assert.Equal(BandStanding.Changed, Fit(354, 349, 348).Standing);
        Assert.Equal(BandStanding.Unchanged, Fit(354, 349, 348, 349).Standing);
        Assert.Equal("steady", Fit(354, 349, 348, 349).Announced);
        // A change that was announced by its probability is not announced again.
        Assert.Equal(BandStanding.Unchanged, Fit(354, 320, 348).Standing);
    }

    [Fact]
    public void It_says_which_way_a_band_changed_on_how_many_tests_and_which_bands_a_level_reaches()
    {
        // Hand arithmetic: bands 250, 300, 350, 400 s; lower time is faster.
        var quicker = Fit(354, 346);
        Assert.Equal(("building", false, 1), (quicker.Before, quicker.IsSlower, quicker.InARow));
        var slower = Fit(346, 351, 352);
        Assert.Equal(("steady", true, 2), (slower.Before, slower.IsSlower, slower.InARow));
        Assert.Equal((null, null, 1), (Fit(346).Before, Fit(346).IsSlower, Fit(346).InARow));
        Assert.Null(Fit(346, 344).IsSlower);
        Estimate Level(double value, double half) => new(value, Unit.Seconds, 3, "entered") { Interval = new Interval(value - half, value + half, ConfidenceLevel.Ninety) };
        Assert.Equal(["steady", "building"], quicker.Reached(Level(348, 3)));
        Assert.Equal(["steady"], quicker.Reached(Level(348, 1)));
        // An edge belongs to the slower band.
        Assert.Equal(["steady", "building"], quicker.Reached(Level(349, 1)));
        Assert.Equal(["building"], quicker.Reached(Level(351, 1)));
        Assert.Equal(["faster than the banded range", "quick"], quicker.Reached(Level(251, 2)));
        Assert.Equal(["slower than the banded range"], quicker.Reached(Level(410, 2)));
    }

    [Fact]
    public void An_edge_belongs_to_the_slower_band_and_nothing_is_clipped()
    {
        Assert.Equal("building", Fit(350).Observed);
        Assert.Equal("faster than the banded range", Fit(240).Observed);
        Assert.Equal("slower than the banded range", Fit(400).Observed);
        Assert.Equal(BandStanding.First, Fit(240).Standing);
    }

    [Fact]
    public void Without_bands_or_sessions_there_is_no_band()
    {
        Assert.Equal(Refusal.BandsMissing, ProbableBand.Fit([WorkedData.FirstSession], Noise, selection: SelectionOptions.KeepAll).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewSessions, ProbableBand.Fit([WorkedData.FirstSession], Noise).Refusal!.Reason);
    }

    private static ProbableBandResult Fit(params double[] totals) => ProbableBand.Fit(
        [.. totals.Select((total, week) => WorkedData.One([total / 5, total / 5, total / 5, total / 5, total / 5], week, protocol: Banded))], Noise, selection: SelectionOptions.KeepAll).GetOrThrow();
}
