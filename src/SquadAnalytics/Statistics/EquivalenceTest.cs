namespace SquadAnalytics.Statistics;

/// <summary>Two one-sided tests: does a true value lie between two bounds that are called "no difference worth having"?</summary>
/// <param name="Estimate">The tested estimate.</param>
/// <param name="LowerBound">Lower bound, in its unit.</param>
/// <param name="UpperBound">Upper bound, in its unit.</param>
/// <param name="PValueLower">One-sided p-value of a true value at or below the lower bound.</param>
/// <param name="PValueUpper">One-sided p-value of a true value at or above the upper bound.</param>
/// <remarks>p-values P(T > (estimate - lower bound) / SE) and P(T &lt; (estimate - upper bound) / SE), T with the estimate's degrees of freedom. At level α both are below α exactly when the 1 - 2α interval lies inside the bounds. Schuirmann (1987), J Pharmacokinet Biopharm 15:657-680 (from memory).</remarks>
public sealed record EquivalenceTest(TEstimate Estimate, double LowerBound, double UpperBound, double PValueLower, double PValueUpper)
{
    /// <summary>p-value of the test of equivalence: the larger of the two.</summary>
    public double PValue => Math.Max(PValueLower, PValueUpper);

    /// <summary>Tests an estimate against two bounds.</summary>
    /// <remarks>Assumes that the estimate's error follows t.</remarks>
    /// <returns>The test, or <see cref="Refusal.ZeroVariance"/> where the standard error is 0.</returns>
    /// <exception cref="ArgumentException">The lower bound is not below the upper one.</exception>
    public static Answer<EquivalenceTest> Fit(TEstimate estimate, double lowerBound, double upperBound)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        if (!(lowerBound < upperBound))
            throw new ArgumentException(FormattableString.Invariant($"The lower bound {lowerBound} must be below the upper bound {upperBound}."), nameof(lowerBound));
        if (estimate.PValueAbove(lowerBound) is { } low && estimate.PValueBelow(upperBound) is { } high) return new EquivalenceTest(estimate, lowerBound, upperBound, low, high);
        return new NotEstimable("the equivalence test", Refusal.ZeroVariance, "a standard error above 0", "0");
    }

    /// <summary>Estimate, bounds and p.</summary>
    public override string ToString() => FormattableString.Invariant($"{Estimate} within {LowerBound:G4} to {UpperBound:G4}: p {PValue:G3}");
}
