using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Power of t tests: how likely a true difference is to be found, how many athletes that takes, which difference can be found.</summary>
/// <remarks>Difference d and SD s in one unit, power a probability. Assumes independent normal numbers. Noncentral t with δ = √n d/s (paired) or √(n/2) d/s (two groups of n). Cohen (1988), Statistical power analysis (from memory; checked against R's power.t.test).</remarks>
public static class TTestPower
{
    private const double FewestAthletes = 2;

    /// <summary>Power with n pairs, or n athletes in each group.</summary>
    /// <param name="n">Pairs or athletes per group, at least 2; need not be whole.</param>
    /// <param name="difference">True difference, in the data's unit.</param>
    /// <param name="standardDeviation">SD of the differences (paired) or within the groups, in the same unit.</param>
    /// <param name="options">Settings; the defaults are a paired two-sided test at 5 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Power(double n, double difference, double standardDeviation, PowerOptions? options = null)
    {
        options ??= new PowerOptions();
        return PowerAt(AtLeastTwo(n), Math.Abs(Require.Finite(difference)) / Require.Positive(standardDeviation), options);
    }

    /// <summary>Smallest n, not rounded up, that reaches a power; 2 where two athletes are enough.</summary>
    /// <param name="power">Wanted power, strictly between 0 and 1.</param>
    /// <param name="difference">True difference, not 0, in the data's unit.</param>
    /// <param name="standardDeviation">SD of the differences (paired) or within the groups, in the same unit.</param>
    /// <param name="options">Settings; the defaults are a paired two-sided test at 5 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double SampleSize(double power, double difference, double standardDeviation, PowerOptions? options = null)
    {
        options ??= new PowerOptions();
        Require.Probability(power);
        var effect = Require.Positive(Math.Abs(difference) / Require.Positive(standardDeviation));
        if (PowerAt(FewestAthletes, effect, options) >= power) return FewestAthletes;
        return FewestAthletes + Math.Exp(BracketedRoot.FindRising(logMore => PowerAt(FewestAthletes + Math.Exp(logMore), effect, options) - power, 1, 1, 1e-11));
    }

    /// <summary>The true difference that is found with a given power.</summary>
    /// <param name="n">Pairs or athletes per group, at least 2.</param>
    /// <param name="power">Wanted power, above the level of the test.</param>
    /// <param name="standardDeviation">SD of the differences (paired) or within the groups, in the data's unit.</param>
    /// <param name="options">Settings; the defaults are a paired two-sided test at 5 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double DetectableDifference(double n, double power, double standardDeviation, PowerOptions? options = null)
    {
        options ??= new PowerOptions();
        AtLeastTwo(n);
        if (!(Require.Probability(power) > options.Alpha))
            throw new ArgumentOutOfRangeException(nameof(power), power, FormattableString.Invariant($"The power must be above the level {options.Alpha}."));
        return Require.Positive(standardDeviation) * BracketedRoot.FindRising(effect => PowerAt(n, Math.Max(0, effect), options) - power, 1, 0.25, 1e-12);
    }

    private static double PowerAt(double n, double effect, PowerOptions options)
    {
        Require.Probability(options.Alpha);
        var (degreesOfFreedom, scale) = options.Design == TTestDesign.TwoGroups ? (2 * (n - 1), Math.Sqrt(n / 2)) : (n - 1, Math.Sqrt(n));
        var critical = StudentTDistribution.UpperQuantile(options.Alpha / (options.TwoSided ? 2 : 1), degreesOfFreedom);
        var found = NoncentralTDistribution.UpperTail(critical, degreesOfFreedom, scale * effect);
        return options is { TwoSided: true, CountWrongDirection: true } ? found + NoncentralTDistribution.Cdf(-critical, degreesOfFreedom, scale * effect) : found;
    }

    private static double AtLeastTwo(double n) => double.IsFinite(n) && n >= FewestAthletes
        ? n
        : throw new ArgumentOutOfRangeException(nameof(n), n, "n must be 2 or more.");
}
