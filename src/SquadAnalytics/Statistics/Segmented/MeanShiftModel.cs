using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A series cut into segments of constant mean.</summary>
/// <param name="Breaks">The breaks in order; empty for one mean.</param>
/// <param name="Means">The mean of each segment.</param>
/// <param name="ResidualSumOfSquares">Sum of squares about the segment means.</param>
/// <param name="Aic">-2 log-likelihood + 2 × parameters; parameters are the means, the breaks and the residual variance. Null for a perfect fit.</param>
/// <param name="Bic">-2 log-likelihood + ln n × parameters. Null for a perfect fit.</param>
public sealed record MeanShiftModel(IReadOnlyList<BreakPlace> Breaks, IReadOnlyList<double> Means, double ResidualSumOfSquares, double? Aic, double? Bic)
{
    /// <summary>Breaks and means.</summary>
    public override string ToString() => Breaks.Count == 0
        ? string.Create(CultureInfo.InvariantCulture, $"no break, mean {Means[0]:0.00##}")
        : $"{string.Join("; ", Breaks)}; means {string.Join(", ", Means.Select(mean => mean.ToString("0.00##", CultureInfo.InvariantCulture)))}";
}
