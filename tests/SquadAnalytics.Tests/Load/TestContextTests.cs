using SquadAnalytics.Load;

namespace SquadAnalytics.Tests.Load;

public sealed class TestContextTests
{
    private static readonly Protocol Circuit = new("pier-v1", "Pier circuit", [], 2, new Seconds(100));
    private static readonly Athlete Ada = new("a1", "Ada Invented", "AI");
    private static readonly DateOnly Test = new(2031, 3, 20);

    [Fact]
    public void Load_is_exertion_times_minutes_and_a_rest_day_counts_only_when_confirmed()
    {
        // Foster et al. (2001): session RPE x minutes; 6 x 70 = 420 by hand.
        Assert.Equal(420, SessionLoad.Of(new DayContext("a1", Test) { SessionRpe = 6, Minutes = 70 }));
        Assert.Equal(0, SessionLoad.Of(new DayContext("a1", Test) { IsRestDay = true }));
        Assert.Null(SessionLoad.Of(new DayContext("a1", Test) { SessionRpe = 6 }));
    }

    [Fact]
    public void Sleep_is_shown_beside_the_median_of_the_other_tests()
    {
        // By hand: the other tests had 7, 8 and 9 hours.
        var squad = WithContexts(
            new DayContext("a1", Test) { SleepHours = 5.5 },
            new DayContext("a1", Test.AddDays(-7)) { SleepHours = 7 },
            new DayContext("a1", Test.AddDays(-14)) { SleepHours = 9 },
            new DayContext("a1", Test.AddDays(-21)) { SleepHours = 8 });
        var sleep = TestContext.Summarize(squad, squad.Sessions[^1]).Measures[0];
        Assert.Equal((5.5, 8.0, 3, -2.5), (sleep.OnTheDay, sleep.Usual, sleep.OtherTests, sleep.Difference));
    }

    [Fact]
    public void A_week_with_a_day_unknown_has_no_load_rather_than_a_smaller_one()
    {
        DayContext Day(int back) => new("a1", Test.AddDays(-back)) { SessionRpe = 5, Minutes = 60 };
        var complete = WithContexts([.. Enumerable.Range(1, 7).Select(Day)]);
        var gap = WithContexts([.. Enumerable.Range(1, 6).Select(Day)]);
        // By hand: 7 days of 5 x 60.
        Assert.Equal(2100, TestContext.Summarize(complete, complete.Sessions[^1]).Measures[2].OnTheDay);
        Assert.Null(TestContext.Summarize(gap, gap.Sessions[^1]).Measures[2].OnTheDay);
        Assert.Contains("Not recorded for this test: load of the seven days before.", TestContext.Summarize(gap, gap.Sessions[^1]).Notes);
    }

    [Fact]
    public void A_bout_within_three_days_and_a_weigh_in_within_a_week_are_named()
    {
        var squad = WithContexts() with
        {
            Events =
            [
                new AthleteEvent("e1", "a1", Test.AddDays(-3), EventKind.Bout),
                new AthleteEvent("e2", "a1", Test.AddDays(-4), EventKind.Bout),
                new AthleteEvent("e3", "a1", Test.AddDays(5), EventKind.WeighIn),
            ],
        };
        Assert.Equal(["e1", "e3"], TestContext.Summarize(squad, squad.Sessions[^1]).Events.Select(item => item.Id));
    }

    [Fact]
    public void A_session_of_another_squad_is_rejected()
    {
        var stranger = Session.FromTimes("x", "a1", Test, Circuit, 60, 61);
        Assert.Throws<ArgumentException>(() => TestContext.Summarize(WithContexts(), stranger));
    }

    private static Squad WithContexts(params DayContext[] contexts) =>
        new("Pier", [Ada], [Circuit], [.. Enumerable.Range(0, 4).Select(week => Session.FromTimes($"s{week}", "a1", Test.AddDays(-7 * week), Circuit, 60, 61))]) { Contexts = contexts };
}
