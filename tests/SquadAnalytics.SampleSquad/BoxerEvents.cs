namespace SquadAnalytics.SampleSquad;

/// <summary>Bouts with their weigh-ins, and knocks to the head.</summary>
internal static class BoxerEvents
{
    private const double CardedShare = 0.35;

    public static IReadOnlyList<AthleteEvent> Draw(SampleScenario scenario, SampleBoxer boxer, string id, Dice dice)
    {
        var events = new List<AthleteEvent>();
        if (boxer.HeadKnockWeek is { } knocked)
        {
            events.Add(new AthleteEvent("", id, scenario.Day(knocked, DayOfWeek.Saturday), EventKind.HeadKnock)
            {
                ClearedOn = scenario.Day(knocked + boxer.WeeksUntilCleared, DayOfWeek.Monday),
            });
        }

        // A boxer with a story stays out of bouts: making weight would be a second reason for a slow test.
        foreach (var week in scenario.BoutWeeks)
        {
            var carded = dice.Chance(CardedShare);
            var bout = scenario.Day(week, DayOfWeek.Saturday);
            if (!carded || boxer.Junior || boxer.Story is not null || week < boxer.FromWeek || week > (boxer.ToWeek ?? week) || events.Any(item => item.BarsTestingOn(bout))) continue;
            events.Add(new AthleteEvent("", id, bout.AddDays(-1), EventKind.WeighIn));
            events.Add(new AthleteEvent("", id, bout, EventKind.Bout));
        }

        return events;
    }

    public static IReadOnlyList<HealthNote> Notes(IReadOnlyList<AthleteEvent> events) =>
    [
        .. events.Where(item => item.Kind == EventKind.HeadKnock)
            .Select(item => new HealthNote("", item.AthleteId, item.Date, "Knock to the head in sparring; stopped at once, sent to a clinician.")),
    ];
}
