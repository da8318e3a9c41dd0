namespace SquadAnalytics.SampleSquad;

/// <summary>One boxer's season: what was drawn, and what came of it.</summary>
internal sealed record BoxerSeason(
    Athlete Athlete,
    BoxerTruth Truth,
    IReadOnlyList<DraftTest> Tests,
    IReadOnlyList<DayContext> Contexts,
    IReadOnlyList<AthleteEvent> Events,
    IReadOnlyList<HealthNote> HealthNotes)
{
    public static BoxerSeason Draw(SampleScenario scenario, int number, IReadOnlyList<double> temperatures)
    {
        var boxer = scenario.Boxers[number - 1];
        var id = SquadGenerator.Id('b', number, 2);
        var truth = DrawAbility(scenario.Effects, boxer, id, new Dice(scenario.Seed, number, Topic.Ability));
        var events = BoxerEvents.Draw(scenario, boxer, id, new Dice(scenario.Seed, number, Topic.Events));
        var tested = Attendance.Draw(scenario, boxer, events, new Dice(scenario.Seed, number, Topic.Attendance));
        var diary = Diary.Draw(scenario, boxer, id, tested, events, new Dice(scenario.Seed, number, Topic.Diary));
        var stopwatch = new TestDay(scenario, boxer, truth, new Dice(scenario.Seed, number, Topic.Times));
        var tests = tested.Weeks.Select(week => stopwatch.Run(week, diary.ContextPercent(week), temperatures[week - 1])).ToList();
        return new BoxerSeason(Describe(scenario, boxer, id), truth, tests, diary.Contexts, events, BoxerEvents.Notes(events));
    }

    private static BoxerTruth DrawAbility(SampleEffects effects, SampleBoxer boxer, string id, Dice dice)
    {
        var level = Math.Clamp(dice.Normal(0, effects.LevelSpreadPercent), -2 * effects.LevelSpreadPercent, 2 * effects.LevelSpreadPercent);
        var drift = Math.Max(0, dice.Normal(effects.DriftPercentPerSet, effects.DriftSpread));
        var trend = dice.Normal(effects.TrendPercentPerWeek, effects.TrendSpread);
        var block = dice.Normal(effects.BlockEffectPercent, effects.BlockEffectSpread);
        return boxer.Story switch
        {
            OnlyNoise => new BoxerTruth(id, boxer.Story, level, effects.DriftPercentPerSet, 0, 0),
            Improvement story => new BoxerTruth(id, story, level, drift, story.PercentPerWeek, 0),
            null => new BoxerTruth(id, null, level, drift, trend, block),
            _ => new BoxerTruth(id, boxer.Story, level, effects.DriftPercentPerSet, trend, block),
        };
    }

    private static Athlete Describe(SampleScenario scenario, SampleBoxer boxer, string id)
    {
        var joined = scenario.Day(boxer.FromWeek, DayOfWeek.Monday);
        var by = boxer.Junior ? "guardian" : "athlete";
        return new Athlete(id, boxer.Name, boxer.Code)
        {
            Sex = boxer.Sex,
            BirthYear = boxer.BirthYear,
            Joined = joined,
            Left = boxer.ToWeek is { } last ? scenario.Day(last, DayOfWeek.Sunday) : null,
            Groups = [new GroupMembership(boxer.Junior ? Athlete.Juniors : "seniors", joined)],
            Consents = boxer.Junior
                ? [new Consent("record times", joined, GivenBy: by)]
                : [new Consent("record times", joined, GivenBy: by), new Consent("named in reports", joined, GivenBy: by)],
        };
    }
}
