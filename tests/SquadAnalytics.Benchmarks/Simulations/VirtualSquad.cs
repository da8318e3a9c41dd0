using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Boxers of the same noise and different levels, tested in the same weeks.</summary>
internal static class VirtualSquad
{
    /// <summary>Number of boxers.</summary>
    public const int Size = 12;

    /// <summary>SD of their levels, in percent.</summary>
    public const double LevelSpreadPercent = 5;

    /// <summary>The id of the boxer who changes; the level is the middling one.</summary>
    public const string Watched = "a1";

    /// <summary>Draws the squad's boxers.</summary>
    public static IReadOnlyList<VirtualBoxer> Draw(SeededRandom random, double noisePercent) =>
    [
        .. Enumerable.Range(1, Size).Select(number => new VirtualBoxer
        {
            Id = "a" + number,
            SetNoisePercent = noisePercent,
            DriftPercentPerSet = 0.6,
            LevelPercent = number == 1 ? 0 : random.NextNormal() * LevelSpreadPercent,
        }),
    ];

    /// <summary>What a boxer's total is without noise, in seconds.</summary>
    public static double Total(VirtualBoxer boxer) => Enumerable.Range(1, boxer.Test.Protocol.Sets).Sum(boxer.ExpectedSet);

    /// <summary>The mean of a boxer's totals, in seconds: noise on logarithms lifts it above the total without noise.</summary>
    public static double MeanTotal(VirtualBoxer boxer)
    {
        double Lift(double percent) => Math.Exp(percent * percent / 20_000);
        var stations = Lift(boxer.Test.StationNoisePercent(boxer.SetNoisePercent));
        return Lift(boxer.DayFormPercent) * Enumerable.Range(1, boxer.Test.Protocol.Sets).Sum(set => (stations * boxer.ExpectedStations(set).Sum()) + boxer.ExpectedTransitions(set));
    }

    /// <summary>SD of a session total about the boxer's level, in percent: √(day form² + set noise² / N).</summary>
    public static double NoisePercent(VirtualBoxer boxer) =>
        Math.Sqrt((boxer.DayFormPercent * boxer.DayFormPercent) + (boxer.SetNoisePercent * boxer.SetNoisePercent / boxer.Test.Protocol.Sets));
}
