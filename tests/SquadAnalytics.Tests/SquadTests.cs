namespace SquadAnalytics.Tests;

public sealed class SquadTests
{
    private static readonly Protocol Circuit = new("quay-v1", "Quay circuit", [new Station("burpees", 8), new Station("squats", 15)], 5, new Seconds(120))
    {
        Bands =
        [
            new PerformanceBand("steady", new Seconds(300), new Seconds(350)),
            new PerformanceBand("quick", new Seconds(250), new Seconds(300)),
            new PerformanceBand("new quick", new Seconds(240), new Seconds(290), new DateOnly(2031, 6, 1)),
        ],
    };

    private static readonly Athlete Ada = new("a1", "Ada Invented", "AI");

    [Fact]
    public void Five_sets_of_sixty_seconds_total_three_hundred()
    {
        // Common practice, no source.
        var session = Session.FromTimes("s1", "a1", new DateOnly(2031, 3, 4), Circuit, 60, 60, 60, 60, 60);
        Assert.Equal(300, session.Total.GetOrThrow().Value);
    }

    [Fact]
    public void A_missing_set_refuses_the_total_and_says_how_many_are_there()
    {
        var session = new Session("s1", "a1", new DateOnly(2031, 3, 4), Circuit, [new SetTime(1, new Seconds(60)), new SetTime(2, SetStatus.NotFinished)]);
        Assert.Equal("Not enough data for the session total: needs 5 timed sets, has 1 timed sets.", session.Total.ToString());
        Assert.Equal(SetStatus.NotRecorded, session.Sets[4].Status);
    }

    [Theory]
    [InlineData(299.99, "quick")]
    [InlineData(300, "steady")]
    [InlineData(350, null)]
    public void A_total_on_an_edge_belongs_to_the_slower_band(double total, string? band) =>
        Assert.Equal(band, Circuit.BandOf(new Seconds(total), new DateOnly(2031, 3, 4))?.Name);

    [Fact]
    public void Newer_bands_replace_older_ones_from_their_date_on() =>
        Assert.Equal(["new quick"], Circuit.BandsOn(new DateOnly(2031, 6, 1)).Select(band => band.Name));

    [Fact]
    public void A_session_of_somebody_unknown_is_rejected()
    {
        var session = Session.FromTimes("s1", "a2", new DateOnly(2031, 3, 4), Circuit, 60, 60, 60, 60, 60);
        var error = Assert.Throws<ArgumentException>(() => new Squad("Quay", [Ada], [Circuit], [session]));
        Assert.Contains("'a2'", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_athlete_is_found_by_code_and_an_unknown_name_lists_the_codes()
    {
        var squad = new Squad("Quay", [Ada], [Circuit], []);
        Assert.Equal(Ada, squad.Athlete(" ai "));
        Assert.Contains("AI", Assert.Throws<ArgumentException>(() => squad.Athlete("Bob")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(9, true)]
    [InlineData(10, false)]
    public void A_head_knock_bars_from_testing_until_the_clearance_date(int day, bool barred)
    {
        var knock = new AthleteEvent("e1", "a1", new DateOnly(2031, 3, 3), EventKind.HeadKnock) { ClearedOn = new DateOnly(2031, 3, 10) };
        Assert.Equal(barred, knock.BarsTestingOn(new DateOnly(2031, 3, day)));
    }
}
