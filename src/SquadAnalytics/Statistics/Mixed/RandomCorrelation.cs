using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>The estimated correlation of two random coefficients of one term.</summary>
/// <param name="Term">Name of the random term.</param>
/// <param name="First">Name of the first column.</param>
/// <param name="Second">Name of the second column.</param>
/// <param name="Correlation">The correlation, between -1 and 1; null where a standard deviation is 0.</param>
public sealed record RandomCorrelation(string Term, string First, string Second, double? Correlation)
{
    /// <summary>The correlation in words.</summary>
    public override string ToString() => Correlation is { } value
        ? string.Create(CultureInfo.InvariantCulture, $"Correlation of {First} and {Second} between {Term}: {value:0.000}")
        : $"Correlation of {First} and {Second} between {Term}: not defined, a standard deviation is 0";
}
