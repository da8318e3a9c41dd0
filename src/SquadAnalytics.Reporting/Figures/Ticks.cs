namespace SquadAnalytics.Reporting.Figures;

/// <summary>Round numbers for an axis: steps of 1, 2 or 5 times a power of ten.</summary>
internal static class Ticks
{
    /// <summary>Round numbers from low to high, about as many as wished.</summary>
    public static IReadOnlyList<double> Between(double low, double high, int wished = 5)
    {
        var step = Step(low, high, wished);
        var first = (long)Math.Ceiling((low / step) - 1e-9);
        var last = (long)Math.Floor((high / step) + 1e-9);
        return [.. Enumerable.Range(0, (int)(last - first + 1)).Select(k => (first + k) * step)];
    }

    /// <summary>Decimals that the numbers of an axis need.</summary>
    public static int Decimals(IReadOnlyList<double> ticks) =>
        ticks.Count < 2 ? 1 : Math.Max(0, (int)-Math.Floor(Math.Log10(ticks[1] - ticks[0]) + 1e-9));

    /// <summary>The numbers of an axis as texts, with as many decimals as their step needs.</summary>
    public static Func<double, string> Text(IReadOnlyList<double> ticks)
    {
        var decimals = Decimals(ticks);
        return tick => NumberFormat.Fixed(tick, decimals);
    }

    /// <summary>The range of some numbers, wider by a share on both sides; never of no width.</summary>
    public static (double Low, double High) Around(IEnumerable<double> numbers, double share = 0.08)
    {
        var all = numbers.ToList();
        var (low, high) = (all.Min(), all.Max());
        var room = high > low ? share * (high - low) : Math.Max(0.5, Math.Abs(low) * 0.01);
        return (low - room, high + room);
    }

    private static double Step(double low, double high, int wished)
    {
        var rough = (high - low) / Math.Max(1, wished);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var lead = rough / power;
        return power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10);
    }
}
