namespace SquadAnalytics.SampleSquad;

/// <summary>A protocol with what a middling boxer needs for it when fresh.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="StationSeconds">Seconds at each station in a fresh first set.</param>
/// <param name="TransitionSeconds">Seconds between the stations of one set, all together.</param>
public sealed record SampleProtocol(Protocol Protocol, IReadOnlyList<double> StationSeconds, double TransitionSeconds)
{
    /// <summary>Seconds of a fresh first set.</summary>
    public double SetSeconds => StationSeconds.Sum() + TransitionSeconds;

    /// <summary>The SD of one station, in percent of its time, that gives the set the stated SD when stations vary independently.</summary>
    internal double StationNoisePercent(double setNoisePercent) => setNoisePercent * SetSeconds / Math.Sqrt(StationSeconds.Sum(seconds => seconds * seconds));
}
