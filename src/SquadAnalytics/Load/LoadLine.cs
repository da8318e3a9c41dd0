using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>A smooth line of daily training load.</summary>
public static class LoadLine
{
    /// <summary>Exponentially weighted average with λ = 2 / (days + 1), started at the first day's load; in arbitrary units.</summary>
    /// <remarks>z_t = λ y_t + (1 - λ) z_(t-1), y_t the load of day t. Descriptive; two lines of different length may stand side by side, their ratio is not offered. Source: Williams et al. 2017, Br J Sports Med 51:209-210 (from memory).
    /// Assumes nothing: it describes, and carries no interval.</remarks>
    /// <param name="dailyLoads">Load of every day in order, rest days 0; no day left out.</param>
    /// <param name="days">N, 1 or more.</param>
    /// <exception cref="ArgumentException">There is no load, one is not finite, or the days are below 1.</exception>
    public static IReadOnlyList<double> Smooth(IReadOnlyList<double> dailyLoads, int days) =>
        ExponentialAverage.Smooth(dailyLoads, 2.0 / (Internals.Require.AtLeast(1, days) + 1));
}
