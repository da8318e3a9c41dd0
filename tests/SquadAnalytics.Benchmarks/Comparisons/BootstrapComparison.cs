using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>Bias-corrected and accelerated interval of a coefficient of variation of 17 readings, 100,000 resamples.</summary>
internal sealed class BootstrapComparison : PeerComparison
{
    private static readonly double[] Readings = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];

    public override string Name => "bootstrap";

    public override string Summary => "BCa interval of a CV, n = 17, 100,000 resamples (R's boot)";

    public override double PeerSeconds(string dataFolder) => PeerScript.Numbers(PeerScript.Run("Rscript", "peer_boot.R", dataFolder), "s")[0];

    public override double OurSeconds(string dataFolder)
    {
        var options = new BootstrapOptions { Resamples = 100_000, ConfidenceLevel = ConfidenceLevel.NinetyFive };

        // boot 1.3-28.1 with 100,000 resamples: 17.10 to 41.84; five Monte Carlo errors, as in tests/Reference/bootstrap/wright_cv.json.
        var limits = Fit().BiasCorrectedAccelerated!.Value;
        RequireClose("lower limit", 17.1001310443764, limits.Lower, 5 * 0.027 * Math.Sqrt(2));
        RequireClose("upper limit", 41.8437857364095, limits.Upper, 5 * 0.154 * Math.Sqrt(2));
        return Stopwatching.MedianSeconds(() => Fit(), runs: 11, warmUps: 5);

        BootstrapResult Fit() => Bootstrap.Of(Readings, sample => 100 * Descriptive.StandardDeviation(sample) / Descriptive.Mean(sample), seed: 1, options).GetOrThrow();
    }
}
