namespace SquadAnalytics.Statistics;

/// <summary>Pearson's chi-squared test of counts against expected shares.</summary>
/// <param name="Statistic">Σ (count - expected)²/expected.</param>
/// <param name="DegreesOfFreedom">Cells minus 1.</param>
/// <param name="SmallestExpected">The smallest expected count; the p-value is rough where it is below 5.</param>
/// <remarks>Pearson (1900), Philos Mag 50:157-175 (from memory; checked against R 4.2.2).</remarks>
public sealed record ChiSquaredTest(double Statistic, int DegreesOfFreedom, double SmallestExpected)
{
    /// <summary>P(chi-squared or more).</summary>
    public double PValue => ChiSquaredDistribution.UpperTail(Statistic, DegreesOfFreedom);

    /// <summary>Tests counts.</summary>
    /// <remarks>Assumes independent counts, about 5 or more expected in each.</remarks>
    /// <param name="counts">Counts of the cells.</param>
    /// <param name="shares">Expected shares that sum to 1, or null for equal ones.</param>
    /// <returns>The test, or <see cref="Refusal.TooFewObservations"/> below two cells or where all counts are 0.</returns>
    /// <exception cref="ArgumentException">A count is below 0, or the shares have another length, are not above 0 or do not sum to 1.</exception>
    public static Answer<ChiSquaredTest> Fit(IReadOnlyList<int> counts, IReadOnlyList<double>? shares = null)
    {
        ArgumentNullException.ThrowIfNull(counts);
        if (counts.Any(count => count < 0)) throw new ArgumentException("A count is 0 or more.", nameof(counts));
        if (shares is not null && (shares.Count != counts.Count || shares.Any(share => !(share > 0)) || Math.Abs(shares.Sum() - 1) > 1e-9))
            throw new ArgumentException(FormattableString.Invariant($"shares must be {counts.Count} numbers above 0 that sum to 1."), nameof(shares));
        if (counts.Count < 2) return new NotEstimable("the chi-squared test", Refusal.TooFewObservations, 2, counts.Count, "cells");
        var total = counts.Sum();
        if (total == 0) return new NotEstimable("the chi-squared test", Refusal.TooFewObservations, 1, 0, "observations");
        double[] expected = [.. counts.Select((_, i) => total * (shares?[i] ?? 1.0 / counts.Count))];
        var statistic = CompensatedSum.Of([.. counts.Select((count, i) => (count - expected[i]) * (count - expected[i]) / expected[i])]);
        return new ChiSquaredTest(statistic, counts.Count - 1, expected.Min());
    }
}
