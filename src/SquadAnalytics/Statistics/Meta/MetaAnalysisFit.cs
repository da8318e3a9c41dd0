using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>Effects with known errors put together.</summary>
public sealed record MetaAnalysisFit
{
    /// <summary>The mean true effect, with the p-value of the hypothesis that it is 0.</summary>
    public required Estimate Mean { get; init; }

    /// <summary>τ², the variance between true effects, in squared units of the effect; its interval is found by profiling Q.</summary>
    public required Estimate BetweenVariance { get; init; }

    /// <summary>τ, the standard deviation between true effects; its limits are the roots of those of τ².</summary>
    public required Estimate BetweenStandardDeviation { get; init; }

    /// <summary>I²: the percentage of the variance of the measured effects that lies between true effects; interval from that of τ².</summary>
    public required Estimate ISquared { get; init; }

    /// <summary>H²: the variance of the measured effects over that of their error; interval from that of τ².</summary>
    public required Estimate HSquared { get; init; }

    /// <summary>Cochran's Q: Σ (y - ȳ)²/v about the mean weighted by the error variances.</summary>
    public required double Q { get; init; }

    /// <summary>Degrees of freedom of Q, k - 1.</summary>
    public required int QDegreesOfFreedom { get; init; }

    /// <summary>Probability of a Q at least this large if all true effects are equal.</summary>
    public required double QPValue { get; init; }

    /// <summary>Where the true effect of one more case like these is expected.</summary>
    public required Interval PredictionInterval { get; init; }

    /// <summary>Every effect pulled toward the mean.</summary>
    public required IReadOnlyList<ShrunkenEffect> Effects { get; init; }

    /// <summary>Estimator of τ².</summary>
    public required BetweenVarianceEstimator Estimator { get; init; }

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The mean, the spread between true effects and the prediction interval.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"Mean {Mean}; SD between true effects {BetweenStandardDeviation}; one more: {PredictionInterval}");
}
