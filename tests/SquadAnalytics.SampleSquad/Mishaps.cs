namespace SquadAnalytics.SampleSquad;

/// <summary>What goes wrong on a clipboard over a season: one test given up, one stopped for health, one set missed by the watch, one test void.</summary>
internal static class Mishaps
{
    public static IReadOnlyList<DraftTest> Apply(SampleScenario scenario, IReadOnlyList<DraftTest> tests)
    {
        var dice = new Dice(scenario.Seed, 0, Topic.Mishaps);
        var changed = tests.ToList();
        // Boxers with a story are left alone, and so are the first and the last month, where other examples look.
        var candidates = Enumerable.Range(0, tests.Count)
            .Where(index => IsOrdinary(scenario, tests[index].Session))
            .ToList();
        Change(test => test.WithSets(Ended(test.Session, set: test.Session.Protocol.Sets - 1, SetStatus.NotFinished)));
        Change(test => test.WithSets(Ended(test.Session, set: 4, SetStatus.StoppedForHealth)));
        Change(test => test.WithSets([.. test.Session.Sets.Select(set => set.Set == 3 ? new SetTime(3, SetStatus.CompletedUntimed) : set)]));
        Change(test => test with { Session = test.Session with { VoidReason = "fire alarm during set 4" } });
        return changed;

        void Change(Func<DraftTest, DraftTest> change)
        {
            var place = dice.Whole(0, candidates.Count - 1);
            changed[candidates[place]] = change(changed[candidates[place]]);
            candidates.RemoveAt(place);
        }
    }

    public static IEnumerable<HealthNote> HealthNotes(IEnumerable<DraftTest> tests) => tests
        .Where(test => test.Session.Sets.Any(set => set.Status == SetStatus.StoppedForHealth))
        .Select(test => new HealthNote("", test.Session.AthleteId, test.Session.Date, "Dizzy in set 4, stopped and sat out; seen by the club's doctor the same evening."));

    private static bool IsOrdinary(SampleScenario scenario, Session session) =>
        session.Protocol.Id == scenario.MainTest.Protocol.Id
        && scenario.Boxers[int.Parse(session.AthleteId.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture) - 1].Story is null
        && session.Date > scenario.TestDay(4)
        && session.Date < scenario.TestDay(scenario.Weeks - 4);

    private static IReadOnlyList<SetTime> Ended(Session session, int set, SetStatus status) =>
        [.. session.Sets.Select(time => time.Set < set ? time : new SetTime(time.Set, time.Set == set ? status : SetStatus.NotStarted))];
}
