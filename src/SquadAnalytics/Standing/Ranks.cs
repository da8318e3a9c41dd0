using SquadAnalytics.Statistics;

namespace SquadAnalytics.Standing;

/// <summary>Ranks of athletes with their uncertainty.</summary>
public static class Ranks
{
    private const int Most = 2_000;

    /// <summary>Ranks athletes, fastest first.</summary>
    /// <remarks>
    /// With estimates m_i and standard errors s_i: expected rank 1 + Σ_(j ≠ i) Φ((m_i - m_j) / √(s_i² + s_j²)); Φ the normal distribution; interval from seeded normal
    /// draws, the lowest ranks whose cumulative shares reach the tails; ranks are whole numbers, so that the shares between add up to the level or more, which each athlete's interval states. Assumes independent normal errors. Sources, from memory: Goldstein
    /// and Spiegelhalter 1996, J R Stat Soc A 159:385-443; Marshall and Spiegelhalter 1998, BMJ 316:1701-1704. Juniors are not ranked by default.
    /// Time and memory grow with the square of the athletes: at most 2,000.
    /// </remarks>
    /// <param name="levels">One level per athlete, all in one unit.</param>
    /// <param name="options">Level, draws and seed; null for the defaults.</param>
    /// <returns>The athletes by expected rank, or <see cref="Refusal.TooFewAthletes"/> below 2, or <see cref="Refusal.TooManyObservations"/> above 2,000.</returns>
    /// <exception cref="ArgumentException">A level has no standard error above 0, or the units differ.</exception>
    public static Answer<IReadOnlyList<RankedAthlete>> Fit(IReadOnlyList<AthleteLevel> levels, RankOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(levels);
        options ??= new RankOptions();
        if (levels.FirstOrDefault(level => level.Estimate.StandardError is not > 0) is { } bare) throw new ArgumentException($"The level of {bare.AthleteId} has no standard error above 0.", nameof(levels));
        if (levels.Select(level => level.Estimate.Unit).Distinct().Count() > 1) throw new ArgumentException("The levels must all be in one unit.", nameof(levels));
        if (levels.Count < 2) return new NotEstimable("ranks", Refusal.TooFewAthletes, 2, levels.Count, "athletes");
        if (levels.Count > Most) return NotEstimable.TooMany("ranks", Most, levels.Count, "athletes");
        var shares = Simulate(levels, options);
        return new Answer<IReadOnlyList<RankedAthlete>>([.. levels.Select(Ranked).OrderBy(athlete => athlete.ExpectedRank.Value)]);

        RankedAthlete Ranked(AthleteLevel level, int i)
        {
            var expected = 1 + levels.Where((_, j) => j != i).Sum(other => 1 - Ahead(level.Estimate, other.Estimate));
            var (from, to) = (Reach(shares[i], options.Level.Alpha / 2), Reach(shares[i], options.Level.UpperTailProbability));
            return new RankedAthlete(
                level.AthleteId, level.Estimate, new Estimate(expected, Unit.None, levels.Count, "1 + Σ P(the other is faster)"), from, to, Math.Min(1, Descriptive.Sum(shares[i][(from - 1)..to])));
        }
    }

    /// <summary>Probability that the first level is truly faster than the second, Φ((m_2 - m_1) / √(s_1² + s_2²)).</summary>
    /// <remarks>Assumes independent normal errors and no knowledge beyond both levels (a flat prior). Source: textbook.</remarks>
    /// <exception cref="ArgumentException">A level has no standard error.</exception>
    public static Estimate FasterThan(Estimate first, Estimate second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.StandardError is not > 0 || second.StandardError is not > 0) throw new ArgumentException("Both levels need a standard error above 0.", nameof(first));
        return new Estimate(Ahead(first, second), Unit.Probability, first.Observations + second.Observations, "normal difference of two levels");
    }

    private static double Ahead(Estimate first, Estimate second) =>
        NormalDistribution.Cdf((second.Value - first.Value) / double.Hypot(first.StandardError!.Value, second.StandardError!.Value));

    /// <summary>Share of draws in which each athlete takes each rank.</summary>
    private static double[][] Simulate(IReadOnlyList<AthleteLevel> levels, RankOptions options)
    {
        var random = new SeededRandom(options.Seed);
        double[][] shares = [.. levels.Select(_ => new double[levels.Count])];
        var drawn = new double[levels.Count];
        var order = new int[levels.Count];
        for (var draw = 0; draw < options.Draws; draw++)
        {
            for (var i = 0; i < drawn.Length; i++)
            {
                drawn[i] = levels[i].Estimate.Value + levels[i].Estimate.StandardError!.Value * random.NextNormal();
                order[i] = i;
            }

            Array.Sort(drawn, order);
            for (var rank = 0; rank < order.Length; rank++) shares[order[rank]][rank] += 1.0 / options.Draws;
        }

        return shares;
    }

    /// <summary>The lowest rank whose cumulative share reaches a probability.</summary>
    private static int Reach(double[] shares, double probability)
    {
        double sum = 0;
        for (var rank = 0; rank < shares.Length; rank++)
        {
            sum += shares[rank];
            if (sum >= probability - 1e-9) return rank + 1;
        }

        return shares.Length;
    }
}
