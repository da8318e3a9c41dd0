using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Ratio of two means with Fieller's interval.</summary>
/// <param name="Ratio">Numerator over denominator.</param>
/// <param name="Interval">Its interval; not symmetric.</param>
/// <param name="Instability">g = t² Var(denominator)/denominator²; the nearer to 1, the less the interval is worth.</param>
/// <remarks>
/// With R the ratio, v11, v22, v12 the variances and covariance of the means, b the denominator and t the quantile of Student's t, the limits are
/// (without a unit where both means have the same) [(R - g v12/v22) ± (t/|b|) √(v11 - 2 R v12 + R² v22 - g (v11 - v12²/v22))]/(1 - g). Assumes normal means. Fieller (1954), J R Stat Soc B 16:175-185 (from memory).
/// </remarks>
public sealed record FiellerRatio(double Ratio, Interval Interval, double Instability)
{
    /// <summary>Ratio of two estimates.</summary>
    /// <remarks>Assumes that both estimates are jointly normal with one estimated scatter.</remarks>
    /// <param name="numerator">Numerator and its standard error; its degrees of freedom rule the interval.</param>
    /// <param name="denominator">Denominator and its standard error.</param>
    /// <param name="covariance">Covariance of the two estimates.</param>
    /// <param name="level">Confidence level.</param>
    /// <returns>The ratio, or <see cref="Refusal.RatioUnstable"/> where the denominator's interval includes 0 (g is 1 or more).</returns>
    /// <exception cref="ArgumentException">The covariance is not finite or larger than the standard errors allow.</exception>
    public static Answer<FiellerRatio> Fit(TEstimate numerator, TEstimate denominator, double covariance, ConfidenceLevel level)
    {
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        if (Math.Abs(Require.Finite(covariance)) > numerator.StandardError * denominator.StandardError * (1 + 1e-9))
            throw new ArgumentException(FormattableString.Invariant($"The covariance {covariance} is larger than the standard errors allow."), nameof(covariance));
        var t = StudentTDistribution.TwoSidedFactor(level, numerator.DegreesOfFreedom);
        var (v11, v22) = (numerator.StandardError * numerator.StandardError, denominator.StandardError * denominator.StandardError);
        var size = Math.Abs(denominator.Value);
        var g = t * t * v22 / (size * size);
        if (!(g < 1)) return new NotEstimable("the ratio", Refusal.RatioUnstable, "a denominator whose interval excludes 0", "one whose interval includes it");
        var ratio = numerator.Value / denominator.Value;
        var slant = v22 > 0 ? covariance / v22 : 0;
        var root = Math.Sqrt(Math.Max(0, v11 - 2 * ratio * covariance + ratio * ratio * v22 - g * (v11 - slant * covariance)));
        var (centre, reach) = ((ratio - g * slant) / (1 - g), t / size * root / (1 - g));
        return new FiellerRatio(ratio, new Interval(centre - reach, centre + reach, level), g);
    }

    /// <summary>Ratio of the means of paired values, for example seconds lost at a station over seconds lost in all, session by session.</summary>
    /// <remarks>As <see cref="Fit"/>, with n - 1 degrees of freedom and the sample covariance over n; n the number of pairs.</remarks>
    /// <param name="numerators">Numerators.</param>
    /// <param name="denominators">Denominators of the same sessions.</param>
    /// <param name="level">Confidence level.</param>
    /// <returns>The ratio, or <see cref="Refusal.TooFewObservations"/> below two pairs, <see cref="Refusal.ZeroVariance"/> where either side has no scatter, <see cref="Refusal.RatioUnstable"/> as for <see cref="Fit"/>.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<FiellerRatio> OfMeans(IReadOnlyList<double> numerators, IReadOnlyList<double> denominators, ConfidenceLevel level)
    {
        var (top, bottom) = (Numbers.Of(numerators, 0), Numbers.Of(denominators, 0));
        Numbers.SameLength(top, bottom, nameof(numerators), nameof(denominators));
        return TTest.OneSample(top, "numerator").Match(
            numerator => TTest.OneSample(bottom, "denominator").Match(
                denominator => Fit(numerator, denominator, Descriptive.Covariance(top, bottom) / top.Length, level),
                refusal => refusal),
            refusal => refusal);
    }
}
