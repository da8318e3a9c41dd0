namespace SquadAnalytics.Change;

/// <summary>One test on an athlete's own chart.</summary>
/// <param name="Session">The test.</param>
/// <param name="ValueSeconds">Its session total, or its residual about the trend.</param>
/// <param name="InBaseline">Whether the limits rest on it.</param>
/// <param name="IsBeyondLimits">Whether it lies beyond centre ± 3 σ̂.</param>
/// <param name="EndsOneSidedRun">Whether it is at least the eighth test in a row on one side of the centre, with no gap above three weeks between.</param>
public sealed record ChartPoint(Session Session, double ValueSeconds, bool InBaseline, bool IsBeyondLimits, bool EndsOneSidedRun)
{
    /// <summary>Whether either rule speaks.</summary>
    public bool IsSignal => IsBeyondLimits || EndsOneSidedRun;
}
