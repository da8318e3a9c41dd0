using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A likelihood ratio test of a smaller model within a larger one.</summary>
/// <param name="ChiSquared">Difference of the deviances; 0 where rounding would make it negative.</param>
/// <param name="DegreesOfFreedom">Difference of the numbers of parameters.</param>
/// <param name="PValue">Probability of a difference at least this large if the smaller model holds, from the chi-squared distribution.</param>
/// <param name="Notes">What a reader has to know.</param>
public sealed record LikelihoodRatioTest(double ChiSquared, int DegreesOfFreedom, double PValue, IReadOnlyList<string> Notes)
{
    /// <summary>The test, for example <c>χ²(2) = 42.14, p = 0.0000</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"χ²({DegreesOfFreedom}) = {ChiSquared:0.00##}, p = {PValue:0.0###}");
}
