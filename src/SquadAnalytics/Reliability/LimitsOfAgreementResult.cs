namespace SquadAnalytics.Reliability;

/// <summary>Limits of agreement of two tests: where 95 of 100 differences of single athletes are expected.</summary>
public sealed record LimitsOfAgreementResult
{
    /// <summary>Mean difference, later minus earlier, with its interval.</summary>
    public required Estimate Bias { get; init; }

    /// <summary>Standard deviation of the differences.</summary>
    public required Estimate Deviation { get; init; }

    /// <summary>Lower limit d̄ - 1.96 s_d, with the exact interval of the limit, and the published standard error √(3/n) s_d.</summary>
    public required Estimate Lower { get; init; }

    /// <summary>Upper limit d̄ + 1.96 s_d, likewise.</summary>
    public required Estimate Upper { get; init; }

    /// <summary>Standard error of either limit by the fuller formula √(1/n + 1.96²/(2 (n - 1))) s_d.</summary>
    public required Estimate LimitError { get; init; }

    /// <summary>Limits for small samples, d̄ ± q_t s_d √(1 + 1/n).</summary>
    public required Interval SmallSample { get; init; }

    /// <summary>Limits of the ratio later / earlier, in percent; refused where a value is not above 0.</summary>
    public required Answer<Interval> Ratio { get; init; }

    /// <summary>Slope of |difference| on the pair's mean: growth of the scatter with the level. Where its interval lies above 0, the ratio limits are the ones to use.</summary>
    public required Answer<Estimate> Growth { get; init; }

    /// <summary>Bias and limits.</summary>
    public override string ToString() => $"Bias {Bias}; limits of agreement {Lower.Value:0.00} to {Upper.Value:0.00}";
}
