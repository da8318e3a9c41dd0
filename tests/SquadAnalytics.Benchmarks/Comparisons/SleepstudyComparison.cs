using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>Random intercept and slope, correlated, by REML: 18 subjects, 180 observations.</summary>
internal sealed class SleepstudyComparison : PeerComparison
{
    public override string Name => "sleepstudy";

    public override string Summary => "mixed model, correlated slope, REML, 180 rows (R's lme4)";

    public override double PeerSeconds(string dataFolder) => PeerScript.Numbers(PeerScript.Run("Rscript", "peer_bench.R", dataFolder, "lme4"), "median_s")[0];

    public override double OurSeconds(string dataFolder)
    {
        var file = CsvColumns.Read(Path.Combine(AppContext.BaseDirectory, "Reference", "mixed", "sleepstudy.csv"));
        double[] reaction = file.Numbers("Reaction"), days = file.Numbers("Days");
        var subjects = file.Text("Subject");

        // lme4 1.1-31, as in tests/Reference/mixed/sleepstudy.json.
        RequireClose("REML criterion", 1743.62827195849, Fit().Deviance, 1e-6);
        return Stopwatching.MedianSeconds(() => Fit(), runs: 41, warmUps: 40);

        MixedFit Fit()
        {
            var day = new DesignColumn("Days", days);
            return MixedModel.Fit(new MixedDesign(
                new DesignColumn("Reaction", reaction),
                [DesignColumn.Intercept(reaction.Length), day],
                [RandomTerm.InterceptAndSlope("Subject", subjects, day)])).GetOrThrow();
        }
    }
}
