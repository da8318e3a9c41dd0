using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>Random intercept and slope, correlated, by REML: 2,000 athletes with 50 sessions each.</summary>
internal sealed class LargeMixedModelComparison : PeerComparison
{
    public override string Name => "mixed-2000x50";

    public override string Summary => "mixed model, correlated slope, REML, 2,000 athletes x 50 sessions (R's lme4, default settings)";

    /// <summary>The middle one of the script's three runs, as ours is the middle one of eleven.</summary>
    public override double PeerSeconds(string dataFolder) => PeerScript.Numbers(PeerScript.Run("Rscript", "peer_bench.R", dataFolder, "lme4big"), "default fit_s").Order().ElementAt(1);

    public override double OurSeconds(string dataFolder)
    {
        var file = CsvColumns.Read(Path.Combine(dataFolder, "lmm.csv"));
        double[] seconds = file.Numbers("y"), sessions = file.Numbers("session");
        var subjects = file.Text("subject");

        // lme4 1.1-31 with bobyqa, rhoend = 1e-10; its default stops 5e-4 short of it.
        RequireClose("REML criterion", 120072.811366, Fit().Deviance, 1e-5);
        // The design holds a response, an intercept and a session for all, an intercept for each subject, and the reference to the subject's name; the session of a subject is the same column.
        var ready = Design();
        Memory = ((4 * sizeof(double) + IntPtr.Size) * (long)seconds.Length, Stopwatching.AllocatedBytes(() => MixedModel.Fit(ready).GetOrThrow()));
        return Stopwatching.MedianSeconds(() => Fit(), runs: 11, warmUps: 10);

        MixedFit Fit() => MixedModel.Fit(Design()).GetOrThrow();

        MixedDesign Design()
        {
            var session = new DesignColumn("session", sessions);
            return new MixedDesign(
                new DesignColumn("y", seconds),
                [DesignColumn.Intercept(seconds.Length), session],
                [RandomTerm.InterceptAndSlope("subject", subjects, session)]);
        }
    }
}
