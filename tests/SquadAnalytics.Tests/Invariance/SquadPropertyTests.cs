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

    public static TheoryData<string> OfOneAthleteEach => [.. SquadAnalyses.OfOneAthleteEach];

    [Theory]
    [MemberData(nameof(All))]
    public void The_order_of_athletes_sessions_and_days_does_not_matter(string analysis) => Gen.Int[1, 1000].Sample(seed =>
    {
        var squad = Draw(seed);
        var random = new SeededRandom(seed);
        var turned = new Squad(squad.Name, random.Shuffle(squad.Athletes), squad.Protocols, random.Shuffle(squad.Sessions)) { Contexts = random.Shuffle(squad.Contexts), Blocks = squad.Blocks };
        Same(Numbers.Of(SquadAnalyses.All[analysis](squad, 1)), Numbers.Of(SquadAnalyses.All[analysis](turned, 1)), _ => 1);
    }, iter: 3);

    [Theory]
    [MemberData(nameof(All))]
    public void A_factor_on_all_times_scales_seconds_and_leaves_all_else(string analysis) => Gen.Select(Gen.Int[1, 1000], Gen.Double[0.5, 2]).Sample((seed, factor) =>
    {
        var squad = Draw(seed);
        Same(Kept(Numbers.Of(SquadAnalyses.All[analysis](squad, 1))), Kept(Numbers.Of(SquadAnalyses.All[analysis](Scaled(squad, factor), factor))), unit => unit switch
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
        Same(Others(Numbers.Of(SquadAnalyses.All[analysis](squad, 1))), Others(Numbers.Of(SquadAnalyses.All[analysis](without, 1))), _ => 1);

        static Dictionary<string, (object, Unit)> Others(Dictionary<string, (object, Unit)> numbers) => numbers.Where(number => !number.Key.Contains("[a1]", StringComparison.Ordinal)).ToDictionary();
    }, iter: 3);

    [Theory]
    [MemberData(nameof(OfOneAthleteEach))]
    public void Two_squads_merged_say_of_each_athlete_what_their_own_squad_says(string analysis) => Gen.Int[1, 1000].Sample(seed =>
    {
        var whole = Draw(seed);
        Squad Half(bool first) => With(whole with { }, whole.Sessions.Where(session => IsFirst(session.AthleteId) == first), whole.Athletes.Where(athlete => IsFirst(athlete.Id) == first));
        var (one, other) = (Numbers.Of(SquadAnalyses.All[analysis](Half(true), 1)), Numbers.Of(SquadAnalyses.All[analysis](Half(false), 1)));
        Same(one.Concat(other).ToDictionary(), Numbers.Of(SquadAnalyses.All[analysis](whole, 1)), _ => 1);

        static bool IsFirst(string id) => id is "a1" or "a2" or "a3" or "a4";
    }, iter: 2);

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

    /// <summary>Iterative fits agree to 1e-5 of the number, or of 1 s or 1 %, whichever is larger.</summary>
    private static void Same(Dictionary<string, (object Value, Unit Unit)> expected, Dictionary<string, (object Value, Unit Unit)> got, Func<Unit, double> factor)
    {
        Assert.NotEmpty(expected);
        Assert.Equal(expected.Keys.Order(StringComparer.Ordinal), got.Keys.Order(StringComparer.Ordinal));
        foreach (var (place, (value, unit)) in expected)
        {
            if (value is double number) ReferenceData.AssertClose(factor(unit) * number, (double)got[place].Value, 1e-5, 1e-5, place);
            else Assert.True(value.Equals(got[place].Value), $"{place}: {value}, then {got[place].Value}");
        }
    }
}
