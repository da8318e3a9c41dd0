using SquadAnalytics.Load;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Standing;

public sealed class WeekAttendanceTests
{
    private static readonly Protocol Circuit = new("mole-v1", "Mole circuit", [], 2, new Seconds(100));
    private static readonly DateOnly Thursday = new(2031, 3, 20);

    [Fact]
    public void Everyone_due_is_listed_with_what_became_of_the_test()
    {
        var squad = Squad(
            ["tested", "stopped", "void", "away", "gone", "new"],
            [Done("tested", -1), Done("tested", 0), Done("stopped", -1), Half("stopped", 0), Done("void", -1), Done("void", 0) with { VoidReason = "alarm" }, Done("away", -1), Done("gone", -1)],
            athlete => athlete.Id == "gone" ? athlete with { Left = Thursday.AddDays(-3) } : athlete);
        var week = WeekAttendance.Summarize(squad, Circuit, Thursday.AddDays(2));
        // By hand: "gone" left before the test day, "new" has never done this protocol.
        Assert.Equal(
            [("away", Presence.Absent), ("stopped", Presence.Incomplete), ("tested", Presence.Tested), ("void", Presence.Void)],
            week.Athletes.Select(athlete => (athlete.AthleteId, athlete.Presence)));
        Assert.Equal((Thursday, new DateOnly(2031, 3, 17), 4), (week.TestDay, week.WeekFrom, week.Due));
        Assert.Equal(Thursday.AddDays(-7), week.Athletes[0].LastComplete);
    }

    [Fact]
    public void A_head_knock_takes_an_athlete_off_those_due_until_the_day_of_clearance()
    {
        var squad = Squad(["a", "b"], [Done("a", 0), Done("a", -1), Done("b", -20)], athlete => athlete) with
        {
            Events = [new AthleteEvent("e", "b", Thursday.AddDays(-100), EventKind.HeadKnock) { ClearedOn = Thursday.AddDays(1) }],
        };
        var barred = WeekAttendance.Summarize(squad, Circuit, Thursday);
        Assert.Equal(Presence.Barred, barred.Athletes[1].Presence);
        Assert.Equal((1, "e"), (barred.Due, barred.Athletes[1].Bar!.Id));
        // After clearance nothing holds "b" on the list: the last test is more than eight weeks ago.
        Assert.DoesNotContain(WeekAttendance.Summarize(squad, Circuit, Thursday.AddDays(7)).Athletes, athlete => athlete.AthleteId == "b");
    }

    [Fact]
    public void Nobody_tested_leaves_the_day_that_was_asked_for()
    {
        var squad = Squad(["a"], [Done("a", -1)], athlete => athlete);
        var week = WeekAttendance.Summarize(squad, Circuit, Thursday.AddDays(1));
        Assert.Equal((Thursday.AddDays(1), Presence.Absent), (week.TestDay, week.Athletes[0].Presence));
        Assert.Throws<ArgumentOutOfRangeException>(() => WeekAttendance.Summarize(squad, Circuit, Thursday, recentWeeks: 0));
    }

    [Fact]
    public void A_test_day_stands_beside_the_earlier_ones_and_names_what_changed()
    {
        Session At(string athlete, int week, double celsius, string timer) => Done(athlete, week) with { TemperatureCelsius = celsius, Timer = timer };
        var squad = Squad(["a", "b"], [At("a", -2, 18, "watch"), At("a", -1, 20, "watch"), At("a", 0, 27, "gate"), At("b", 0, 29, "gate")], athlete => athlete) with
        {
            Contexts = [new DayContext("a", Thursday) { SleepHours = 6 }, new DayContext("b", Thursday) { SleepHours = 8 }, new DayContext("a", Thursday.AddDays(-7)) { SleepHours = 7.5 }],
        };
        var day = TestDay.Summarize(squad, Circuit, Thursday);
        // By hand: median of 27 and 29; median of the days before, 18 and 20; mean sleep of 6 and 8.
        Assert.Equal((28.0, 19.0, 2), (day.Measures[0].OnTheDay, day.Measures[0].Usual, day.Measures[0].OtherTests));
        Assert.Equal((7.0, 7.5, 1), (day.Measures[1].OnTheDay, day.Measures[1].Usual, day.Measures[1].OtherTests));
        Assert.Null(day.Measures[2].OnTheDay);
        Assert.Equal(["timer: gate instead of watch"], day.Changes);
        Assert.Equal(2, day.Athletes);
    }

    private static Squad Squad(string[] athletes, Session[] sessions, Func<Athlete, Athlete> with) =>
        new("Mole Squad", [.. athletes.Select(id => with(new Athlete(id, id, id.ToUpperInvariant())))], [Circuit], sessions);

    private static Session Done(string athlete, int week) => Session.FromTimes($"{athlete}{week}", athlete, Thursday.AddDays(7 * week), Circuit, 60, 61);

    private static Session Half(string athlete, int week) =>
        new($"{athlete}{week}", athlete, Thursday.AddDays(7 * week), Circuit, [new SetTime(1, new Seconds(60)), new SetTime(2, SetStatus.NotFinished)]);
}
