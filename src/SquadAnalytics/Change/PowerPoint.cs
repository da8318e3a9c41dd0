using System.Globalization;

namespace SquadAnalytics.Change;

/// <summary>The chance of telling a true difference after a number of further tests.</summary>
/// <param name="Further">Further tests; for blocks, tests in each block.</param>
/// <param name="Power">The chance, from 0 to 1; its interval comes from that of the noise.</param>
public sealed record PowerPoint(int Further, Estimate Power)
{
    /// <summary>Tests and chance.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Further} further tests: {100 * Power.Value:0} %");
}
