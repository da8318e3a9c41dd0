using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>Three tests of whether the mean of a series stays the same.</summary>
/// <param name="LargestF">The largest F over all places of one break: good at one clear shift.</param>
/// <param name="AverageF">The mean F over all places: good at small or drawn-out shifts.</param>
/// <param name="CumulativeSum">The largest cumulative sum of residuals: shows when the series wanders.</param>
public sealed record MeanStabilityFit(BreakTest LargestF, BreakTest AverageF, BreakTest CumulativeSum)
{
    /// <summary>The three tests, one per line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LargestF}{Environment.NewLine}{AverageF}{Environment.NewLine}{CumulativeSum}");
}
