using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>A statistic with its bootstrap distribution summed up.</summary>
public sealed record BootstrapResult
{
    /// <summary>The statistic of the data.</summary>
    public required double Statistic { get; init; }

    /// <summary>Unit of the statistic, its standard error and limits.</summary>
    public required Unit Unit { get; init; }

    /// <summary>Standard deviation of the resampled statistic.</summary>
    public required double StandardError { get; init; }

    /// <summary>Mean of the resampled statistic minus the statistic.</summary>
    public required double Bias { get; init; }

    /// <summary>z₀ = Φ⁻¹(share of resamples below the statistic); null where none or all are.</summary>
    public required double? BiasCorrection { get; init; }

    /// <summary>The acceleration from the jackknife.</summary>
    public required double Acceleration { get; init; }

    /// <summary>Percentiles of the resampled statistic.</summary>
    public required Interval Percentile { get; init; }

    /// <summary>Percentiles mirrored at the statistic: 2t - upper to 2t - lower.</summary>
    public required Interval Basic { get; init; }

    /// <summary>Statistic less bias, plus or minus a normal quantile of standard errors.</summary>
    public required Interval Normal { get; init; }

    /// <summary>Bias-corrected and accelerated limits; null where the bias correction is not defined.</summary>
    public required Interval? BiasCorrectedAccelerated { get; init; }

    /// <summary>The probabilities at which the bias-corrected and accelerated limits are read off, lower then upper; empty without them.</summary>
    public required IReadOnlyList<double> AcceleratedLevels { get; init; }

    /// <summary>How many resamples gave a finite statistic.</summary>
    public required int Resamples { get; init; }

    /// <summary>The seed.</summary>
    public required long Seed { get; init; }

    /// <summary>How many observations, or clusters.</summary>
    public required int Observations { get; init; }

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The statistic as an estimate with one of the intervals.</summary>
    /// <param name="interval">Which; bias-corrected and accelerated by default, and the percentile interval where that is not defined.</param>
    public Estimate Estimate(BootstrapInterval interval = BootstrapInterval.BiasCorrectedAccelerated)
    {
        var (limits, name) = interval switch
        {
            BootstrapInterval.Percentile => (Percentile, "percentile"),
            BootstrapInterval.Basic => (Basic, "basic"),
            BootstrapInterval.Normal => (Normal, "normal"),
            BootstrapInterval.BiasCorrectedAccelerated when BiasCorrectedAccelerated is { } accelerated => (accelerated, "bias-corrected and accelerated"),
            BootstrapInterval.BiasCorrectedAccelerated => (Percentile, "percentile"),
            _ => throw new ArgumentOutOfRangeException(nameof(interval), interval, "Not a bootstrap interval."),
        };
        return new Estimate(Statistic, Unit, Observations, string.Create(CultureInfo.InvariantCulture, $"bootstrap, {name}, {Resamples} resamples, seed {Seed}"))
        {
            StandardError = StandardError,
            Interval = limits,
            Notes = Notes,
        };
    }

    /// <summary>The estimate with its default interval.</summary>
    public override string ToString() => Estimate().ToString();
}
