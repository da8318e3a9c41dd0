namespace SquadAnalytics.Reliability;

/// <summary>Whether the last digits of written times pile up.</summary>
public sealed record DigitHeapingResult
{
    /// <summary>How often each last digit 0 to 9 occurs.</summary>
    public required IReadOnlyList<int> Counts { get; init; }

    /// <summary>Chi-squared statistic against equal shares, 9 degrees of freedom, with its p-value.</summary>
    public required Estimate ChiSquared { get; init; }

    /// <summary>Share of 0 and 5, with the two-sided exact binomial p-value against 0.2.</summary>
    public required Estimate RoundShare { get; init; }

    /// <summary>Statistic and share.</summary>
    public override string ToString() => FormattableString.Invariant($"Last digits: chi-squared {ChiSquared.Value:0.0}, share of 0 and 5 {RoundShare.Value:0.00}");
}
