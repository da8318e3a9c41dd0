using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A test of whether there is a change at all, its place being unknown.</summary>
/// <param name="Method">The test, in a few words.</param>
/// <param name="Statistic">The statistic.</param>
/// <param name="PValue">Probability of a statistic at least this large without a change; an upper bound where the method says so.</param>
/// <param name="Place">Where the change stands out most: an x, or the observation after which it comes; null where the test names none.</param>
public sealed record BreakTest(string Method, double Statistic, double PValue, double? Place)
{
    /// <summary>The test in words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Method}: {Statistic:0.00##}, p = {PValue:0.0###}");
}
