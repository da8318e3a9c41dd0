using System.Globalization;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Change;

/// <summary>What else differed between two training blocks: the facts that have to stand beside every comparison of them.</summary>
public static class BlockCircumstances
{
    private const int BoutDays = 3;
    private const int WeighInDays = 7;

    /// <summary>Counts the circumstances of two blocks from the logbook.</summary>
    /// <remarks>
    /// <para>A test was due in every week of a block in which the squad tested, for each athlete of the block who does this test, was in the squad (from the first test where no joining date is
    /// written down) and was not barred by a head knock on all test days of the week. Conditions are those of all started tests, other protocols included, of athletes with an eligible test;
    /// the other counts are of eligible tests. What was not written down is unknown, not absent.</para>
    /// <para>Counts, and shares in percent. Descriptive, assumes nothing; time grows linearly with sessions. Source: common practice in reporting uncontrolled before-after comparisons, no source.</para>
    /// </remarks>
    /// <param name="squad">The squad with its context and events.</param>
    /// <param name="first">The earlier block.</param>
    /// <param name="second">The later block; it begins after the first ends.</param>
    /// <param name="options">Health notes, comparisons tried, selection; null for the defaults.</param>
    /// <returns>The counts, or <see cref="Refusal.MixedProtocols"/> where the selection names no protocol and the tests are of several.</returns>
    /// <exception cref="ArgumentException">The blocks overlap or are in the wrong order.</exception>
    public static Answer<BlockCircumstancesResult> Summarize(Squad squad, TrainingBlock first, TrainingBlock second, BlockCircumstancesOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(squad);
        options ??= new BlockCircumstancesOptions();
        return BlockTests.Of(squad.Sessions, first, second, options.Selection).Select(tests => Of(squad, tests, options));
    }

    private static BlockCircumstancesResult Of(Squad squad, BlockTests tests, BlockCircumstancesOptions options)
    {
        var athletes = tests.Athletes.Select(own => own.AthleteId).ToHashSet(StringComparer.Ordinal);
        var days = squad.Contexts.ToDictionary(day => (day.AthleteId, day.Date));
        var events = squad.Events.ToLookup(item => (item.AthleteId, item.Kind), item => item.Date.DayNumber);
        BlockCount Tests(Func<Session, bool> counts) => new(tests.Athletes.Sum(own => own.First.Count(counts)), tests.Athletes.Sum(own => own.Second.Count(counts)));
        int? Sparring(Session test) => days.GetValueOrDefault((test.AthleteId, test.Date))?.SparringRoundsBefore;
        return new BlockCircumstancesResult
        {
            First = tests.Attendance(tests.First, own => own.First),
            Second = tests.Attendance(tests.Second, own => own.Second),
            FirstDue = Due(squad, tests.First, options.Selection.Protocol),
            SecondDue = Due(squad, tests.Second, options.Selection.Protocol),
            WeeksBetween = (Middle(tests.Second) - Middle(tests.First)) / SeasonWeeks.DaysPerWeek,
            Juniors = tests.Athletes.Count(own => own.First.Count > 0 && own.Second.Count > 0 && squad.Athlete(own.AthleteId).IsJuniorOn(tests.Second.From)),
            DefinedAfterData = tests.First.DefinedAfterData || tests.Second.DefinedAfterData,
            InOneBlockOnly = [.. tests.Athletes.Where(own => own.First.Count == 0 || own.Second.Count == 0).Select(own => own.LeftOut(1))],
            Conditions = Conditions([.. squad.Sessions.Where(session => session is { IsStarted: true, IsVoid: false } && athletes.Contains(session.AthleteId))], tests),
            AfterSparring = Tests(test => Sparring(test) > 0),
            SparringUnknown = Tests(test => Sparring(test) is null),
            MakingWeight = Tests(test => events[(test.AthleteId, EventKind.WeighIn)].Any(day => day - test.Date.DayNumber is >= 0 and <= WeighInDays)),
            NearABout = Tests(test => events[(test.AthleteId, EventKind.Bout)].Any(day => Math.Abs(day - test.Date.DayNumber) <= BoutDays)),
            AthletesWithHealthNotes = options.HealthNotes is { } notes ? new BlockCount(Noted(tests.First, athletes, notes, squad), Noted(tests.Second, athletes, notes, squad)) : null,
            ComparisonsTried = options.ComparisonsTried,
            PairsOfBlocks = squad.Blocks.Sum(earlier => squad.Blocks.Count(later => later.From > earlier.To)),
            Selection = tests.Selection,
        };
    }

    private static BlockDue Due(Squad squad, TrainingBlock block, Protocol? protocol)
    {
        var sessions = squad.Sessions.Where(session => !session.IsVoid && (protocol is null || session.Protocol.Key == protocol.Key)).ToLookup(session => session.AthleteId);
        var weeks = sessions.SelectMany(own => own).Where(session => block.Covers(session.Date) && block.Includes(session.AthleteId)).Select(session => session.Date).Distinct().ToLookup(TestSeries.MondayOf);
        var knocks = squad.Events.Where(item => item.Kind == EventKind.HeadKnock).ToLookup(item => item.AthleteId);
        var (due, done) = (0, 0);
        foreach (var athlete in squad.Athletes.Where(athlete => block.Includes(athlete.Id) && sessions.Contains(athlete.Id)))
        {
            var own = sessions[athlete.Id].Where(session => session.IsStarted && block.Covers(session.Date)).Select(session => TestSeries.MondayOf(session.Date)).ToHashSet();
            var joined = athlete.Joined ?? sessions[athlete.Id].Min(session => session.Date);
            foreach (var week in weeks)
            {
                var came = own.Contains(week.Key);
                var could = week.Any(date => date >= joined && (athlete.Left is null || date <= athlete.Left) && !knocks[athlete.Id].Any(knock => knock.BarsTestingOn(date)));
                if (came || could) due++;
                if (came) done++;
            }
        }

        return new BlockDue(due, done);
    }

    private static IReadOnlyList<BlockCondition> Conditions(IReadOnlyList<Session> started, BlockTests tests)
    {
        List<Session> first = [.. started.Where(session => tests.First.Includes(session.AthleteId) && tests.First.Covers(session.Date))];
        List<Session> second = [.. started.Where(session => tests.Second.Includes(session.AthleteId) && tests.Second.Covers(session.Date))];
        return
        [
            BlockCondition.Of(BlockConditionKind.Timer, first, second, session => session.Timer),
            BlockCondition.Of(BlockConditionKind.Place, first, second, session => session.Place),
            BlockCondition.Of(BlockConditionKind.Circuit, first, second, session => string.Create(CultureInfo.InvariantCulture, $"{(session.Protocol.Stations.Count == 0 ? "circuit" : string.Join(" + ", session.Protocol.Stations))}, {session.Protocol.Sets} sets")),
            BlockCondition.Of(BlockConditionKind.StartInterval, first, second, session => session.Protocol.StartInterval is { } interval
                ? $"{interval}{(session.Protocol.StartRule == StartRule.StopAtMissedStart ? ", the test ends at a missed start" : "")}"
                : null),
            BlockCondition.Of(BlockConditionKind.TimingStep, first, second, session => session.TimingResolution?.Value.ToString("0.### s", CultureInfo.InvariantCulture)),
        ];
    }

    private static int Noted(TrainingBlock block, HashSet<string> athletes, IReadOnlyList<HealthNote> notes, Squad squad) =>
        notes.Select(note => (note.AthleteId, note.Date)).Concat(squad.Events.Where(item => item.Kind == EventKind.HeadKnock).Select(item => (item.AthleteId, item.Date)))
            .Where(noted => athletes.Contains(noted.AthleteId) && block.Includes(noted.AthleteId) && block.Covers(noted.Date)).Select(noted => noted.AthleteId).Distinct().Count();

    private static double Middle(TrainingBlock block) => (block.From.DayNumber + block.To.DayNumber) / 2.0;
}
