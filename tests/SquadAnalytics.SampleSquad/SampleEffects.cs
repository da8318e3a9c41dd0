namespace SquadAnalytics.SampleSquad;

/// <summary>Every effect and every noise that the generator builds in, with its size. Percent are of the set time; negative is faster.</summary>
public sealed record SampleEffects
{
    /// <summary>SD of one set of an adult about the boxer's own profile of that day, in percent.</summary>
    public double SetNoisePercent { get; init; } = 1.2;

    /// <summary>The same for juniors.</summary>
    public double JuniorSetNoisePercent { get; init; } = 1.8;

    /// <summary>SD of the day's form, common to all sets of a session, in percent.</summary>
    public double DayFormPercent { get; init; } = 0.8;

    /// <summary>How much slower the first, second, ... session of a protocol is before it is known, in percent.</summary>
    public IReadOnlyList<double> LearningPercent { get; init; } = [2.5, 0.6];

    /// <summary>SD of boxers' levels, in percent.</summary>
    public double LevelSpreadPercent { get; init; } = 5.0;

    /// <summary>Mean steady slowing from set to set, in percent per set.</summary>
    public double DriftPercentPerSet { get; init; } = 0.6;

    /// <summary>SD of that between boxers.</summary>
    public double DriftSpread { get; init; } = 0.2;

    /// <summary>Mean change per week outside the blocks' effect, in percent.</summary>
    public double TrendPercentPerWeek { get; init; } = -0.02;

    /// <summary>SD of that between boxers.</summary>
    public double TrendSpread { get; init; } = 0.03;

    /// <summary>Mean level of the second block against the first once it has taken hold, in percent.</summary>
    public double BlockEffectPercent { get; init; } = -2.0;

    /// <summary>SD of that between boxers.</summary>
    public double BlockEffectSpread { get; init; } = 0.8;

    /// <summary>Weeks over which the second block's effect grows from nothing to its full size.</summary>
    public int BlockRampWeeks { get; init; } = 3;

    /// <summary>Percent slower for each round of sparring before the test beyond the mean of two.</summary>
    public double SparringPercentPerRound { get; init; } = 0.15;

    /// <summary>Percent for each hour of sleep beyond 7.3.</summary>
    public double SleepPercentPerHour { get; init; } = -0.2;

    /// <summary>Percent slower for each 100 units of load in the seven days before the test beyond what the block asks for.</summary>
    public double LoadPercentPerHundred { get; init; } = 0.08;

    /// <summary>Percent slower in a test of the week in which the boxer makes weight for a bout.</summary>
    public double WeightMakingPercent { get; init; } = 1.0;

    /// <summary>The chance that a boxer misses a test, apart from holidays and head knocks.</summary>
    public double AbsenceShare { get; init; } = 0.10;
}
