namespace SquadAnalytics.SampleSquad;

/// <summary>Everything the generator needs: who, which tests, how long, and how large every built-in effect is.</summary>
/// <param name="Club">Name of the invented club.</param>
/// <param name="Seed">Seed of all draws.</param>
/// <param name="Boxers">The roster.</param>
/// <param name="MainTest">The test of most weeks.</param>
/// <param name="JuniorTest">Its scaled variant for juniors.</param>
/// <param name="LongTest">The test that replaces it for adults in some weeks.</param>
public sealed record SampleScenario(string Club, int Seed, IReadOnlyList<SampleBoxer> Boxers, SampleProtocol MainTest, SampleProtocol JuniorTest, SampleProtocol LongTest)
{
    /// <summary>The first Monday.</summary>
    public DateOnly Start { get; init; } = new(2030, 9, 2);

    /// <summary>Number of weeks, each with one test day, its Thursday.</summary>
    public int Weeks { get; init; } = 30;

    /// <summary>The long test replaces the main one in every week that this number divides.</summary>
    public int LongEvery { get; init; } = 7;

    /// <summary>Station times are taken in the weeks of the main test that this number divides.</summary>
    public int StationsEvery { get; init; } = 2;

    /// <summary>The first week of the second training block.</summary>
    public int SecondBlockFromWeek { get; init; } = 16;

    /// <summary>Weeks with a bout night on Saturday.</summary>
    public IReadOnlyList<int> BoutWeeks { get; init; } = [9, 20, 27];

    /// <summary>The built-in effects and noises.</summary>
    public SampleEffects Effects { get; init; } = new();

    /// <summary>Name of the first block and what it stresses.</summary>
    public SampleBlock FirstBlock { get; init; } = new("Long rounds", "steady endurance", 6.0, 70);

    /// <summary>Name of the second block and what it stresses.</summary>
    public SampleBlock SecondBlock { get; init; } = new("Hard repeats", "strength endurance under short rest", 7.0, 65);

    /// <summary>The date of a weekday of a week; weeks count from 1.</summary>
    public DateOnly Day(int week, DayOfWeek day) => Start.AddDays((7 * (week - 1)) + (((int)day + 6) % 7));

    /// <summary>The date of the test of a week.</summary>
    public DateOnly TestDay(int week) => Day(week, DayOfWeek.Thursday);

    /// <summary>The same scenario drawn anew.</summary>
    public SampleScenario WithSeed(int seed) => this with { Seed = seed };
}
