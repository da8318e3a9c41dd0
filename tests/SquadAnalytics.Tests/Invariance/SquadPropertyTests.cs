using CsCheck;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Invariance;

/// <summary>What must not matter to any analysis of a squad: every number of every result is compared.</summary>
public sealed class SquadPropertyTests
{
    private const int Athletes = 9;

    public static TheoryData<string> All => [.. SquadAnalyses.All.Keys];

    public static TheoryData<string> InSeconds => [.. SquadAnalyses.All.Keys.Except(SquadAnalyses.OfLogarithms)];

    public static TheoryData<string> OfOneAthleteEach => [.. SquadAnalyses.OfOneAthleteEach];

    [Theory]
    [MemberData(nameof(All))]
    public void The_order_of_athletes_sessions_and_days_does_not_matter(string analysis) => Gen.Int[1, 1000].Sample(seed =>
    {
        var squad = Draw(seed);
        var random = new SeededRandom(seed);
        var turned = new Squad(squad.Name, random.Shuffle(squad.Athletes), squad.Protocols, random.Shuffle(squad.Sessions)) { Contexts = random.Shuffle(squad.Contexts), Blocks = squad.Blocks };
        Numbers.AssertSame(SquadAnalyses.Numbers(analysis, squad), SquadAnalyses.Numbers(analysis, turned));
    }, iter: 3);

    [Theory]
    [MemberData(nameof(All))]
    public void A_factor_on_all_times_scales_seconds_and_leaves_all_else(string analysis) => Gen.Select(Gen.Int[1, 1000], Gen.Double[0.5, 2]).Sample((seed, factor) =>
    {
        var squad = Draw(seed);
        Numbers.AssertSame(Kept(SquadAnalyses.Numbers(analysis, squad)), Kept(SquadAnalyses.Numbers(analysis, Scaled(squad, factor), factor)), unit => unit switch
        {
            Unit.Seconds or Unit.SecondsPerSet or Unit.SecondsPerWeek or Unit.SecondsPerLoad or Unit.SecondsPerRound or Unit.SecondsPerHour or Unit.SecondsPerKilogram or Unit.SecondsPerDegree => factor,
            _ => 1,
        });

        // The clock's time constant is looked for between 15 and 600 s, whatever the times are, and the step in which times were written is read off their digits.
        static Dictionary<string, (object, Unit)> Kept(Dictionary<string, (object, Unit)> numbers) => numbers
            .Where(number => !new[] { ExplanationCause.ClockFeedback, ExplanationCause.Noise }.Any(cause => number.Key.Contains($"Candidates[{(int)cause}]", StringComparison.Ordinal))).ToDictionary();
    }, iter: 3);

    [Theory]
    [MemberData(nameof(OfOneAthleteEach))]
    public void A_missing_session_of_one_athlete_leaves_the_others_unchanged(string analysis) => Gen.Select(Gen.Int[1, 1000], Gen.Int[0, 24]).Sample((seed, week) =>
    {
        var squad = Draw(seed);
        var without = With(squad, squad.Sessions.Where(session => session.Id != $"a1-{week}"));
        Numbers.AssertSame(Others(SquadAnalyses.Numbers(analysis, squad)), Others(SquadAnalyses.Numbers(analysis, without)));

        static Dictionary<string, (object, Unit)> Others(Dictionary<string, (object, Unit)> numbers) => numbers.Where(number => !number.Key.Contains("[a1]", StringComparison.Ordinal)).ToDictionary();
    }, iter: 3);

    [Theory]
    [MemberData(nameof(OfOneAthleteEach))]
    public void Two_squads_merged_say_of_each_athlete_what_their_own_squad_says(string analysis) => Gen.Int[1, 1000].Sample(seed =>
    {
        var whole = Draw(seed);
        Squad Half(bool first) => With(whole with { }, whole.Sessions.Where(session => IsFirst(session.AthleteId) == first), whole.Athletes.Where(athlete => IsFirst(athlete.Id) == first));
        var (one, other) = (SquadAnalyses.Numbers(analysis, Half(true)), SquadAnalyses.Numbers(analysis, Half(false)));
        Numbers.AssertSame(one.Concat(other).ToDictionary(), SquadAnalyses.Numbers(analysis, whole));

        static bool IsFirst(string id) => id is "a1" or "a2" or "a3" or "a4";
    }, iter: 2);

    [Theory]
    [MemberData(nameof(All))]
    public void Sessions_of_two_lists_put_together_in_any_order_say_the_same(string analysis) => Gen.Int[1, 1000].Sample(seed =>
    {
        var squad = Draw(seed);
        var random = new SeededRandom(seed);
        var parts = squad.Sessions.ToLookup(_ => random.NextSign() > 0);
        IReadOnlyList<Session> joined = [.. parts[true], .. parts[false]];
        Numbers.AssertSame(SquadAnalyses.Numbers(analysis, squad), SquadAnalyses.Numbers(analysis, squad, sessions: joined));
        Numbers.AssertSame(SquadAnalyses.Numbers(analysis, squad), SquadAnalyses.Numbers(analysis, squad, sessions: random.Shuffle(joined)));
    }, iter: 2);

    [Theory]
    [MemberData(nameof(All))]
    public void Whole_weeks_on_all_dates_move_dates_and_nothing_else(string analysis) => Gen.Select(Gen.Int[1, 1000], Gen.Int[-500, 500]).Sample((seed, weeks) =>
    {
        var squad = Draw(seed);
        DateOnly Moved(DateOnly date) => date.AddDays(7 * weeks);
        var moved = new Squad(squad.Name, squad.Athletes, squad.Protocols, [.. squad.Sessions.Select(session => Session.FromTimes(session.Id, session.AthleteId, Moved(session.Date), session.Protocol, session.TimesSeconds))])
        {
            Contexts = [.. squad.Contexts.Select(day => day with { Date = Moved(day.Date) })],
            Blocks = [.. squad.Blocks.Select(block => new TrainingBlock(block.Id, block.Name, Moved(block.From), Moved(block.To)))],
        };
        var expected = SquadAnalyses.Numbers(analysis, squad).ToDictionary(number => number.Key, number => number.Value.Value is DateOnly date ? (Moved(date), number.Value.Unit) : number.Value);
        Numbers.AssertSame(expected, SquadAnalyses.Numbers(analysis, moved));
    }, iter: 2);

    [Theory]
    [MemberData(nameof(InSeconds))]
    public void Seconds_on_every_set_move_the_levels_and_nothing_else(string analysis) => Gen.Select(Gen.Int[1, 1000], Gen.Double[-20, 20]).Sample((seed, seconds) =>
    {
        var squad = Draw(seed);
        var protocol = squad.Protocols[0];
        var total = protocol.Sets * seconds;
        var moved = new Protocol(protocol.Id, protocol.Name, protocol.Stations, protocol.Sets, protocol.StartInterval)
        {
            Bands = [.. protocol.Bands.Select(band => new PerformanceBand(band.Name, new Seconds(band.Low.Value + total), new Seconds(band.High.Value + total)))],
        };
        var slower = new Squad(squad.Name, squad.Athletes, [moved], [.. squad.Sessions.Select(session => Session.FromTimes(session.Id, session.AthleteId, session.Date, moved, [.. session.TimesSeconds.Select(time => time + seconds)]))])
        {
            Contexts = squad.Contexts,
            Blocks = squad.Blocks,
        };
        var expected = SquadAnalyses.Numbers(analysis, squad).ToDictionary(number => number.Key, number => SquadAnalyses.IsLevel(number.Key) && number.Value.Value is double level ? (level + total, number.Value.Unit) : number.Value);
        Numbers.AssertSame(Kept(expected), Kept(SquadAnalyses.Numbers(analysis, slower)));

        // What is given in percent beside the seconds compares logarithms.
        static Dictionary<string, (object, Unit)> Kept(Dictionary<string, (object Value, Unit Unit)> numbers) => numbers
            .Where(number => !number.Key.Contains("Relative", StringComparison.Ordinal) && !number.Key.Contains("Variation", StringComparison.Ordinal)).ToDictionary();
    }, iter: 3);

    private static Squad Draw(int seed) => LargeSquad.Draw(Athletes * LargeSquad.SessionsEach, seed);

    private static Squad With(Squad squad, IEnumerable<Session> sessions, IEnumerable<Athlete>? athletes = null) =>
        new(squad.Name, [.. athletes ?? squad.Athletes], squad.Protocols, [.. sessions]) { Contexts = squad.Contexts, Blocks = squad.Blocks };

    private static Squad Scaled(Squad squad, double factor)
    {
        var before = squad.Protocols[0];
        var protocol = new Protocol(before.Id, before.Name, before.Stations, before.Sets, before.StartInterval is { } interval ? new Seconds(factor * interval.Value) : null)
        {
            Bands = [.. before.Bands.Select(band => new PerformanceBand(band.Name, new Seconds(factor * band.Low.Value), new Seconds(factor * band.High.Value)))],
        };
        return new Squad(squad.Name, squad.Athletes, [protocol], [.. squad.Sessions.Select(session => Session.FromTimes(session.Id, session.AthleteId, session.Date, protocol, [.. session.TimesSeconds.Select(time => factor * time)]))])
        {
            Contexts = squad.Contexts,
            Blocks = squad.Blocks,
        };
    }
}
