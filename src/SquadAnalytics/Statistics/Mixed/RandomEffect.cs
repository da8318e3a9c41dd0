using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>The predicted coefficient of one group, as a deviation from the fixed effect and pulled toward it (best linear unbiased prediction).</summary>
/// <param name="Term">Name of the random term.</param>
/// <param name="Group">The group.</param>
/// <param name="Column">Name of the column.</param>
/// <param name="Deviation">Predicted deviation from the fixed effect, in <paramref name="Unit"/>.</param>
/// <param name="ConditionalStandardDeviation">Its standard deviation given the data, with the variances and fixed effects taken as known: too small in small squads.</param>
/// <param name="Unit">Unit of both.</param>
public sealed record RandomEffect(string Term, string Group, string Column, double Deviation, double ConditionalStandardDeviation, Unit Unit)
{
    /// <summary>The effect in words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Group}, {Column}: {Deviation:0.00##} {Unit.Symbol()} (SD {ConditionalStandardDeviation:0.00##})");
}
