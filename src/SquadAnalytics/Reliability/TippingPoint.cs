namespace SquadAnalytics.Reliability;

/// <summary>How much slower missed tests would have to have been to undo a result.</summary>
/// <param name="ErasesDifference">Seconds per missed test that erase the difference.</param>
/// <param name="ReachesLimit">Seconds per missed test at which the interval reaches 0.</param>
public sealed record TippingPoint(Estimate ErasesDifference, Estimate ReachesLimit)
{
    /// <summary>Both figures.</summary>
    public override string ToString() => $"Missed tests {ErasesDifference} slower would erase the difference, {ReachesLimit} slower would make it unclear";
}
