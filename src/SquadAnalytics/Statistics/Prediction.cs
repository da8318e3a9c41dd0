namespace SquadAnalytics.Statistics;

/// <summary>What a linear model expects at one set of explanatory values, in the response's unit.</summary>
/// <param name="Value">The expected response.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="MeanInterval">Interval for the expected response.</param>
/// <param name="NewObservationInterval">Interval for one new observation there, which scatters around the expected response.</param>
public sealed record Prediction(double Value, double StandardError, Interval MeanInterval, Interval NewObservationInterval)
{
    /// <summary>The expected response with both intervals.</summary>
    public override string ToString() => FormattableString.Invariant($"{Value:G6}, mean {MeanInterval}, new observation {NewObservationInterval}");
}
