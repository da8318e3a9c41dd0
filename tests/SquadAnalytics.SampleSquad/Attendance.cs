namespace SquadAnalytics.SampleSquad;

/// <summary>The weeks in which a boxer did the test, and those spent away.</summary>
internal sealed record Attendance(IReadOnlyList<int> Weeks, IReadOnlyList<int> Away)
{
    private const double HolidayShare = 0.4;

    public static Attendance Draw(SampleScenario scenario, SampleBoxer boxer, IReadOnlyList<AthleteEvent> events, Dice dice)
    {
        var last = boxer.ToWeek ?? scenario.Weeks;
        var holiday = dice.Chance(HolidayShare);
        var from = dice.Whole(boxer.FromWeek + 2, last - 2);
        var length = dice.Whole(2, 3);
        var weeks = new List<int>();
        var away = new List<int>();
        for (var week = boxer.FromWeek; week <= last; week++)
        {
            var missed = dice.Chance(scenario.Effects.AbsenceShare);
            if (holiday && week >= from && week < from + length) away.Add(week);
            else if (!missed && !events.Any(item => item.BarsTestingOn(scenario.TestDay(week))) && !(boxer.Junior && week % scenario.LongEvery == 0)) weeks.Add(week);
        }

        return new Attendance(weeks, away);
    }
}
