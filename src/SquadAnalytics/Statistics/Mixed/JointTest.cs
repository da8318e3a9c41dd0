using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>An F test of several contrasts of fixed effects at once.</summary>
/// <param name="F">The statistic; scaled as the method asks.</param>
/// <param name="NumeratorDf">Numerator degrees of freedom: how many independent contrasts.</param>
/// <param name="DenominatorDf">Denominator degrees of freedom; null for the normal approximation, where F times its numerator df is chi-squared.</param>
/// <param name="PValue">Probability of an F at least this large if all contrasts are 0.</param>
/// <param name="Method">How the denominator was found.</param>
public sealed record JointTest(double F, int NumeratorDf, double? DenominatorDf, double PValue, string Method)
{
    /// <summary>The test, for example <c>F(2, 13) = 7.57, p = 0.0066</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"F({NumeratorDf}, {(DenominatorDf is { } df ? df.ToString("0.##", CultureInfo.InvariantCulture) : "∞")}) = {F:0.00##}, p = {PValue:0.0###}");
}
