using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>What the fatigue indices would show if the pacing were perfectly even and only set-to-set scatter remained: they are not 0.</summary>
public sealed record NoiseFloor
{
    private NoiseFloor(int sets, double logNoise, NoiseFloorOptions options)
    {
        Sets = sets;
        SetNoise = Percent.FromLog(logNoise);
        Options = options;
    }

    /// <summary>Number of sets.</summary>
    public int Sets { get; }

    /// <summary>The set noise assumed, as a CV.</summary>
    public Percent SetNoise { get; }

    /// <summary>Runs and seed of the simulation.</summary>
    public NoiseFloorOptions Options { get; }

    /// <summary>Mean percentage decrement under even pacing.</summary>
    public Percent DecrementExpected { get; private init; }

    /// <summary>The decrement that 19 of 20 even sessions stay below.</summary>
    public Percent DecrementLimit { get; private init; }

    /// <summary>Mean index from the extremes under even pacing.</summary>
    public Percent ExtremesExpected { get; private init; }

    /// <summary>The index from the extremes that 19 of 20 even sessions stay below.</summary>
    public Percent ExtremesLimit { get; private init; }

    /// <summary>Mean first-to-last change under even pacing.</summary>
    public Percent FirstToLastExpected { get; private init; }

    /// <summary>The first-to-last change that 19 of 20 even sessions stay below.</summary>
    public Percent FirstToLastLimit { get; private init; }

    /// <summary>Simulates even sessions at an athlete's own set noise.</summary>
    /// <remarks>t_k = exp(σ z_k), σ the set noise and z_k standard normal, 20 000 sessions by default; mean and 95th percentile of the indices of <see cref="FatigueIndices"/>, in percent. Assumes even true pacing and independent normal noise of ln t. Source: seeded simulation; common practice gives no formula.</remarks>
    /// <param name="noise">The set noise, from <see cref="Sets.SetNoise"/>.</param>
    /// <param name="options">Runs and seed; null for the defaults.</param>
    public static NoiseFloor Simulate(SetNoiseResult noise, NoiseFloorOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(noise);
        return Simulate(noise.Sets, noise.LogNoise.Value, options);
    }

    /// <summary>Simulates even sessions of n sets whose logarithms have independent normal noise.</summary>
    internal static NoiseFloor Simulate(int sets, double logNoise, NoiseFloorOptions? options = null)
    {
        options ??= new NoiseFloorOptions();
        var random = new SeededRandom(options.Seed);
        var decrement = new double[options.Runs];
        var extremes = new double[options.Runs];
        var firstToLast = new double[options.Runs];
        var times = new double[sets];
        for (var run = 0; run < options.Runs; run++)
        {
            for (var k = 0; k < sets; k++) times[k] = Math.Exp(logNoise * random.NextNormal());
            var measures = SetMeasures.Of(times);
            decrement[run] = measures.Decrement;
            extremes[run] = 100 * (measures.Worst / measures.Best - 1);
            firstToLast[run] = 100 * (measures.LastToFirst - 1);
        }

        return new NoiseFloor(sets, logNoise, options)
        {
            DecrementExpected = new Percent(Descriptive.Mean(decrement)),
            DecrementLimit = NinetyFifth(decrement),
            ExtremesExpected = new Percent(Descriptive.Mean(extremes)),
            ExtremesLimit = NinetyFifth(extremes),
            FirstToLastExpected = new Percent(Descriptive.Mean(firstToLast)),
            FirstToLastLimit = NinetyFifth(firstToLast),
        };
    }

    /// <summary>Expected size of the smallest (or largest) of n standard normals: n ∫ x φ(x) Φ(x)^(n-1) dx on ±9.</summary>
    /// <remarks>By the trapezoidal rule, which for a smooth function that dies out at both ends converges faster than any power of the width
    /// (from memory: Trefethen and Weideman 2014, SIAM Rev 56:385-458).</remarks>
    internal static double ExpectedExtreme(int sets)
    {
        const int steps = 90;
        const double reach = 9, width = 2 * reach / steps;
        double sum = 0;
        for (var i = 1; i < steps; i++)
        {
            var x = -reach + i * width;
            sum += x * NormalDistribution.Density(x) * Math.Pow(NormalDistribution.Cdf(x), sets - 1);
        }

        return sets * sum * width;
    }

    /// <summary>The noise and the limits of the indices.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Sets} even sets with noise {SetNoise.Value:0.00} %: decrement {DecrementExpected.Value:0.00} % on average, 95 % below {DecrementLimit.Value:0.00} %");

    private static Percent NinetyFifth(double[] values)
    {
        Array.Sort(values);
        return new Percent(values[(int)Math.Ceiling(0.95 * values.Length) - 1]);
    }
}
