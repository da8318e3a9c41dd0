using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>The nonparametric bootstrap: how a statistic varies when the observations, or whole clusters of them, are drawn again with replacement.</summary>
/// <remarks>
/// With t the statistic, t*_(1..R) its sorted resamples and q(p) their quantile at rank (R+1)p: percentile q(α/2) to q(1-α/2); basic
/// 2t - q(1-α/2) to 2t - q(α/2); normal t - bias ± z s*, s* the standard deviation of the resamples and z the normal quantile; bias-corrected and accelerated q(α₁) to q(α₂) with
/// α_i = Φ(z₀ + (z₀ + z_i)/(1 - a(z₀ + z_i))), z₀ = Φ⁻¹(#{t* &lt; t}/R), a the jackknife acceleration.
/// Assumes independent observations (or clusters) and a statistic that changes smoothly; with few observations all limits are too narrow.
/// The resamples run on all processors, each thousand from its own stream of the seed, so that a seed gives the same result on any machine;
/// the statistic must therefore keep no state. Sources: Efron (1987), J Am Stat Assoc 82:171-185; Davison and Hinkley (1997), Bootstrap Methods
/// and their Application (both from memory).
/// </remarks>
public static class Bootstrap
{
    private const int ChunkSize = 1_000;
    private const int FewObservations = 10;
    private const double LargestLostShare = 0.05;
    private const string Measure = "the bootstrap interval";

    private delegate double Draw(SeededRandom random);

    /// <summary>Draws single numbers.</summary>
    /// <param name="values">The numbers, independent of each other.</param>
    /// <param name="statistic">The statistic of a sample; called from several threads, and the list it is given is used again afterwards.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <param name="options">Settings; by default 10,000 resamples and 90 % intervals.</param>
    /// <returns>
    /// The bootstrap, or <see cref="Refusal.TooFewObservations"/> below three numbers, <see cref="Refusal.TooManyObservations"/> above the 5,000 that the acceleration's jackknife takes, <see cref="Refusal.ZeroVariance"/> where the statistic does
    /// not vary between resamples or is not a finite number for the data or with one number left out, <see cref="Refusal.WeaklyIdentified"/> where it is none for more than 5 % of the resamples.
    /// </returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<BootstrapResult> Of(IReadOnlyList<double> values, Func<IReadOnlyList<double>, double> statistic, long seed, BootstrapOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        var sample = Numbers.Of(values, 0);
        Draw Drawing()
        {
            var drawn = new double[sample.Length];
            return random =>
            {
                for (var k = 0; k < drawn.Length; k++) drawn[k] = sample[random.NextIndex(drawn.Length)];
                return statistic(drawn);
            };
        }

        return Run(Jackknife.Of(sample, statistic), sample.Length, Drawing, seed, options ?? new BootstrapOptions());
    }

    /// <summary>Draws rows of a table that the statistic knows, for example pairs of measurements.</summary>
    /// <param name="rows">How many rows.</param>
    /// <param name="statistic">The statistic of the rows with these numbers, from 0; called from several threads.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <param name="options">Settings; by default 10,000 resamples and 90 % intervals.</param>
    /// <returns>The bootstrap, or what <see cref="Of"/> refuses, with rows in place of numbers.</returns>
    public static Answer<BootstrapResult> OfRows(int rows, Func<IReadOnlyList<int>, double> statistic, long seed, BootstrapOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        return OfUnits(ResamplingUnits.Rows(rows), statistic, seed, options);
    }

    /// <summary>Draws whole clusters, for example athletes with all their sessions, which keeps what belongs together.</summary>
    /// <param name="clusters">The cluster of each row.</param>
    /// <param name="statistic">The statistic of the rows with these numbers, from 0; a cluster drawn twice gives its rows twice.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <param name="options">Settings; by default 10,000 resamples and 90 % intervals.</param>
    /// <returns>The bootstrap, or what <see cref="Of"/> refuses, with clusters in place of numbers.</returns>
    public static Answer<BootstrapResult> OfClusters(IReadOnlyList<string> clusters, Func<IReadOnlyList<int>, double> statistic, long seed, BootstrapOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        return OfUnits(ResamplingUnits.Clusters(clusters), statistic, seed, options);
    }

    private static Answer<BootstrapResult> OfUnits(ResamplingUnits units, Func<IReadOnlyList<int>, double> statistic, long seed, BootstrapOptions? options)
    {
        Draw Drawing()
        {
            var fixedLength = new int[units.Count];
            var anyLength = new List<int>();
            return random => statistic(units.Draw(random, fixedLength, anyLength));
        }

        return Run(Jackknife.Run(units, statistic), units.Count, Drawing, seed, options ?? new BootstrapOptions());
    }

    private static Answer<BootstrapResult> Run(Answer<JackknifeResult> jackknife, int observations, Func<Draw> drawing, long seed, BootstrapOptions options)
    {
        if (!jackknife.TryGet(out var exact)) return new NotEstimable(Measure, jackknife.Refusal!.Reason, jackknife.Refusal.Needed, jackknife.Refusal.Found);
        var resampled = Resample(drawing, seed, options.Resamples);
        var finite = resampled.All(double.IsFinite) ? resampled : [.. resampled.Where(double.IsFinite)];
        var lost = resampled.Length - finite.Length;
        if (lost > LargestLostShare * resampled.Length)
        {
            return new NotEstimable(
                Measure, Refusal.WeaklyIdentified, "a statistic that is a finite number for 95 % of the resamples", string.Create(CultureInfo.InvariantCulture, $"{finite.Length} of {resampled.Length}"));
        }

        Array.Sort(finite);
        if (finite[0] == finite[^1]) return new NotEstimable(Measure, Refusal.ZeroVariance, "a statistic that varies between resamples", "one value");
        return Summarize(exact, finite, lost, observations, seed, options);
    }

    private static double[] Resample(Func<Draw> drawing, long seed, int count)
    {
        var resampled = new double[count];
        Parallel.For(0, (count + ChunkSize - 1) / ChunkSize, drawing, (chunk, _, draw) =>
        {
            var random = new SeededRandom(seed, chunk + 1);
            var last = Math.Min(count, (chunk + 1) * ChunkSize);
            for (var k = chunk * ChunkSize; k < last; k++) resampled[k] = draw(random);
            return draw;
        }, _ => { });
        return resampled;
    }

    private static BootstrapResult Summarize(JackknifeResult exact, double[] sorted, int lost, int observations, long seed, BootstrapOptions options)
    {
        var level = options.ConfidenceLevel;
        var statistic = exact.Statistic;
        var standardError = Descriptive.StandardDeviation(sorted);
        var bias = Descriptive.Mean(sorted) - statistic;
        var z = NormalDistribution.Quantile(level.UpperTailProbability);
        var percentile = Read(sorted, 1 - level.UpperTailProbability, level.UpperTailProbability, level);
        var notes = new List<string>();
        if (observations < FewObservations) notes.Add(string.Create(CultureInfo.InvariantCulture, $"Only {observations} observations: bootstrap limits tend to be too narrow."));
        if (lost > 0) notes.Add(string.Create(CultureInfo.InvariantCulture, $"{lost} resamples without a finite statistic were left out."));
        var below = CountBelow(sorted, statistic);
        double? correction = below > 0 && below < sorted.Length ? NormalDistribution.Quantile(below / (double)sorted.Length) : null;
        double[] levels = correction is { } shift ? [Accelerated(shift, exact.Acceleration, -z), Accelerated(shift, exact.Acceleration, z)] : [];
        if (levels.Length == 0) notes.Add("All resamples lie on one side of the statistic: no bias-corrected limits.");
        return new BootstrapResult
        {
            Statistic = statistic,
            Unit = options.Unit,
            StandardError = standardError,
            Bias = bias,
            BiasCorrection = correction,
            Acceleration = exact.Acceleration,
            Percentile = percentile,
            Basic = new Interval(2 * statistic - percentile.Upper, 2 * statistic - percentile.Lower, level),
            Normal = new Interval(statistic - bias - z * standardError, statistic - bias + z * standardError, level),
            BiasCorrectedAccelerated = levels.Length == 0 ? null : Read(sorted, levels.Min(), levels.Max(), level),
            AcceleratedLevels = levels,
            Resamples = sorted.Length,
            Seed = seed,
            Observations = observations,
            Notes = notes,
        };
    }

    private static double Accelerated(double shift, double acceleration, double z) =>
        NormalDistribution.Cdf(shift + (shift + z) / (1 - acceleration * (shift + z)));

    private static Interval Read(double[] sorted, double lower, double upper, ConfidenceLevel level) =>
        new(SampleQuantile.OfSorted(sorted, lower, QuantileRule.MeanPosition), SampleQuantile.OfSorted(sorted, upper, QuantileRule.MeanPosition), level);

    private static int CountBelow(double[] sorted, double statistic)
    {
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < statistic) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
