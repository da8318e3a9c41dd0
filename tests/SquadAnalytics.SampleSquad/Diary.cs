namespace SquadAnalytics.SampleSquad;

/// <summary>What surrounded one boxer's training, day by day, and what it costs in the tests.</summary>
internal sealed class Diary
{
    private const double TrainingShare = 0.88;
    private const double UsualSleepHours = 7.3;
    private const int DaysOfLoad = 7;
    private readonly SampleScenario _scenario;
    private readonly SampleBoxer _boxer;
    private readonly Dictionary<DateOnly, DayContext> _days = [];
    private readonly HashSet<int> _weighedWeeks;

    private Diary(SampleScenario scenario, SampleBoxer boxer, IReadOnlyList<AthleteEvent> events)
    {
        _scenario = scenario;
        _boxer = boxer;
        _weighedWeeks = [.. scenario.BoutWeeks.Where(week => events.Any(item => item.Kind == EventKind.WeighIn && item.Date == scenario.Day(week, DayOfWeek.Friday)))];
    }

    /// <summary>What was written down; some days were not.</summary>
    public IReadOnlyList<DayContext> Contexts { get; private set; } = [];

    private int UsualRounds => _boxer.Junior ? 1 : 2;

    public static Diary Draw(SampleScenario scenario, SampleBoxer boxer, string id, Attendance tested, IReadOnlyList<AthleteEvent> events, Dice dice)
    {
        var diary = new Diary(scenario, boxer, events);
        var mass = boxer.Junior ? dice.Between(46, 66) : dice.Between(54, 92);
        var written = new List<DayContext>();
        for (var week = boxer.FromWeek; week <= (boxer.ToWeek ?? scenario.Weeks); week++)
        {
            foreach (var day in Enumerable.Range(0, DaysOfLoad).Select(offset => scenario.Day(week, DayOfWeek.Monday).AddDays(offset)))
            {
                var isTest = day.DayOfWeek == DayOfWeek.Thursday && tested.Weeks.Contains(week);
                var barred = events.Any(item => item.BarsTestingOn(day));
                var context = diary.DrawDay(id, week, day, isTest, barred, mass, dice);
                if (tested.Away.Contains(week)) continue;
                diary._days[day] = context;
                if (diary.Thinned(context, isTest, dice) is { } kept) written.Add(kept);
            }
        }

        diary.Contexts = written;
        return diary;
    }

    /// <summary>How much slower the context makes the test of a week, in percent.</summary>
    public double ContextPercent(int week)
    {
        var effects = _scenario.Effects;
        var test = _scenario.TestDay(week);
        var day = _days[test];
        var block = BlockOf(week);
        var plan = block.MeanRpe * block.MeanMinutes * (1 - effects.AbsenceShare + (3 * TrainingShare));
        var load = Enumerable.Range(1, DaysOfLoad).Sum(back => _days.TryGetValue(test.AddDays(-back), out var before) ? (before.SessionRpe ?? 0) * (before.Minutes ?? 0) : 0);
        // In the first week there is no week before; a week away leaves none either.
        var loadPercent = week == _boxer.FromWeek || load == 0 ? 0 : effects.LoadPercentPerHundred * (load - plan) / 100;
        return (effects.SparringPercentPerRound * ((day.SparringRoundsBefore ?? UsualRounds) - UsualRounds))
            + (effects.SleepPercentPerHour * ((day.SleepHours ?? UsualSleepHours) - UsualSleepHours))
            + (_weighedWeeks.Contains(week) ? effects.WeightMakingPercent : 0)
            + loadPercent;
    }

    private SampleBlock BlockOf(int week) => week >= _scenario.SecondBlockFromWeek ? _scenario.SecondBlock : _scenario.FirstBlock;

    private DayContext DrawDay(string id, int week, DateOnly day, bool isTest, bool barred, double mass, Dice dice)
    {
        var block = BlockOf(week);
        var rpe = Math.Clamp(Math.Round(dice.Normal(block.MeanRpe, 1)), 2, 10);
        var minutes = 5 * Math.Round(dice.Normal(block.MeanMinutes, 8) / 5);
        var comes = dice.Chance(TrainingShare);
        var sleep = Math.Round(2 * dice.Normal(UsualSleepHours, 0.8)) / 2;
        var rounds = dice.Whole(0, 2 * UsualRounds);
        var massToday = Math.Round(mass + dice.Normal(0, 0.5) - (_weighedWeeks.Contains(week) ? 1.5 : 0), 1);
        var trains = !barred && (isTest || (comes && day.DayOfWeek is DayOfWeek.Monday or DayOfWeek.Tuesday or DayOfWeek.Saturday));
        return new DayContext(id, day)
        {
            SessionRpe = trains ? rpe : null,
            Minutes = trains ? minutes : null,
            IsRestDay = !trains,
            SleepHours = sleep,
            SparringRoundsBefore = isTest ? rounds : null,
            BodyMassKilograms = isTest ? massToday : null,
        };
    }

    private DayContext? Thinned(DayContext day, bool isTest, Dice dice)
    {
        var noLoad = dice.Chance(0.05);
        var noSleep = dice.Chance(isTest ? 0.1 : 0.6);
        var noMass = dice.Chance(0.2);
        var kept = day with
        {
            SessionRpe = noLoad ? null : day.SessionRpe,
            Minutes = noLoad ? null : day.Minutes,
            IsRestDay = !noLoad && day.IsRestDay,
            SleepHours = noSleep ? null : day.SleepHours,
            BodyMassKilograms = noMass ? null : day.BodyMassKilograms,
        };
        return kept == new DayContext(day.AthleteId, day.Date) ? null : kept;
    }
}
