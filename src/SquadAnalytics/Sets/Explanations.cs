using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>What explains an athlete's slow-down? Candidate explanations side by side, each with what speaks for it, against it, and what would settle it.</summary>
public static partial class Explanations
{
    private const int StepNeeds = 4;

    /// <summary>Puts the candidates side by side.</summary>
    /// <remarks>
    /// <para>The slow-down is c = mean of the sets after b minus mean of the sets up to b, in seconds, a one-sample t over sessions
    /// (<see cref="LateSlowdown"/>). Drift and break are fitted side by side in every session, t_k = a + β k + δ [k > b]: the drift's effect is
    /// β, the break's δ = κ / (b (n - b) / n Σ w²), κ the contrast beyond a straight line with weights w; each is a one-sample t over sessions.
    /// Alone, a drift could account for n β̂ / 2 (β̂ without the step), a break for c. A station counts where it slows by more than its part of the set
    /// (<see cref="StationShares"/>), a fast start by <see cref="StartingTooFast"/> (sets 2 on; in seconds -θ s times
    /// the mean set, s the SD of ln t of set 1), the clock by <see cref="Recovery"/>, a circumstance by
    /// Spearman's correlation with the slow-down over at least 10 tests, lag named (in seconds: the least-squares slope of the slow-down on it times its SD). Noise: t of the one-sided level times the standard error of c.</para>
    /// <para>False alarms: with 90 % intervals no cause is named unless the slow-down itself is above 0 (one-sided 5 %, gate), and the p-values of
    /// the candidates tested are adjusted together by Holm (1979, Scand J Stat 6:65-70, from memory), so that a wrong one is named in at most 5 %.
    /// "Not supported" asks more than a large p: the upper limit of what the candidate adds must be below what matters
    /// (equivalence; Schuirmann 1987, J Pharmacokinet Biopharm 15:657-680, from memory). All else is "cannot tell". The clock's feedback is never named: with one
    /// start interval rest and work time are one variable.</para>
    /// <para>Limits count what was picked: where b was found by searching they hold for all n - 1 sets together (max-t), those of the station for all
    /// stations (Bonferroni, transitions not among them), while its p-value is adjusted over stations and transitions (Holm).</para>
    /// <para>Times alone do not prove a cause. Combining the parts into one table is this library's own, no source.</para>
    /// <para>Assumes independent sessions whose contrasts are normal.</para>
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">b, days, circumstance, what matters, level, selection; null for the defaults.</param>
    /// <returns>The candidates, or the refusal of <see cref="LateSlowdown.Fit"/>, or <see cref="Refusal.TooFewSets"/> below 4 sets.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or b is not a set before the last.</exception>
    public static Answer<ExplanationsResult> Fit(IReadOnlyList<Session> sessions, ExplanationsOptions? options = null)
    {
        options ??= new ExplanationsOptions();
        var late = LateSlowdown.Fit(sessions, new LateSlowdownOptions { AfterSet = options.AfterSet, Level = options.Level, Selection = options.Selection, Seed = options.Seed });
        if (!late.TryGet(out var slowdown)) return late.Refusal!;
        var n = slowdown.Selection.Sessions[0].Protocol.Sets;
        return n < StepNeeds ? new NotEstimable("the explanations", Refusal.TooFewSets, StepNeeds, n, "sets") : Of(new Evidence(slowdown, sessions, options));
    }

    private static ExplanationsResult Of(Evidence evidence)
    {
        Candidate[] candidates = [Drift(evidence), Break(evidence), Start(evidence), Station(evidence), Clock(evidence), Before(evidence), Noise(evidence)];
        var tested = candidates.Where(candidate => candidate.PValue is not null).ToList();
        var adjusted = MultipleTesting.Holm([.. tested.Select(candidate => candidate.PValue!.Value)]);
        return new ExplanationsResult
        {
            AfterSet = evidence.After,
            Choice = evidence.Late.Choice,
            Slowdown = evidence.Late.LateContrast,
            SlowdownPValue = evidence.Late.LatePValue,
            Matters = new Seconds(evidence.Matters),
            Candidates = [.. candidates.Select(candidate => Judged(candidate, candidate.PValue is null ? null : adjusted[tested.IndexOf(candidate)], evidence))],
            Notes =
            [
                string.Create(CultureInfo.InvariantCulture, $"A cause is named only where the slow-down is above 0 and its p-value, adjusted over the {tested.Count} candidates tested (Holm), is at most {evidence.Alpha:0.###}: a wrong one is named in at most that share of such tables."),
                string.Create(CultureInfo.InvariantCulture, $"\"Not supported\" means that the upper limit of what a candidate adds is below {evidence.Matters:0.00} s, {evidence.Options.Matters.Value:0.##} % of a set. What came before may act either way: there both limits must be within that."),
                "The seconds that candidates could account for overlap and do not add up; less rest and slower sets are the same seconds.",
                .. evidence.Late.Selection.Notes,
            ],
            Selection = evidence.Late.Selection,
        };
    }

    private static Explanation Judged(Candidate candidate, double? adjusted, Evidence evidence)
    {
        var named = adjusted <= evidence.Alpha && evidence.IsSlower && !candidate.IsAmbiguous;
        var standing = candidate.Standing ?? (named ? ExplanationStanding.Supported
            : candidate.Largest < evidence.Matters && !candidate.IsAmbiguous ? ExplanationStanding.NotSupported
            : ExplanationStanding.CannotTell);
        return new Explanation
        {
            Cause = candidate.Cause,
            Name = candidate.Name,
            Effect = candidate.Effect,
            Accounts = candidate.Accounts,
            PValue = adjusted is { } p ? new Estimate(p, Unit.Probability, evidence.Profiles.Length, candidate.Test + ", Holm's adjustment over the candidates tested") : null,
            Standing = standing,
            Supports = candidate.Supports,
            Contradicts = [.. candidate.Contradicts, .. evidence.IsSlower || candidate.Cause == ExplanationCause.Noise ? Array.Empty<string>() : ["The late sets are not clearly slower: there may be nothing to explain."]],
            Separates = candidate.Separates,
        };
    }

    /// <summary>What all candidates look at.</summary>
    private sealed class Evidence
    {
        public Evidence(LateSlowdownResult late, IReadOnlyList<Session> sessions, ExplanationsOptions options)
        {
            (Late, Sessions, Options) = (late, sessions, options);
            Profiles = [.. late.Selection.Sessions.Select(session => session.TimesSeconds.ToArray())];
            MeanSet = Descriptive.Mean([.. Profiles.SelectMany(profile => profile)]);
            IsSlower = late.LatePValue.Value <= Alpha;
            Searched = late.Choice == BreakChoice.FoundBySearch ? late
                : LateSlowdown.Fit(sessions, new LateSlowdownOptions { Level = options.Level, Selection = options.Selection, Seed = options.Seed }).Match<LateSlowdownResult?>(result => result, _ => null);
        }

        public LateSlowdownResult Late { get; }

        public IReadOnlyList<Session> Sessions { get; }

        public ExplanationsOptions Options { get; }

        public double[][] Profiles { get; }

        public double MeanSet { get; }

        public bool IsSlower { get; }

        /// <summary>The set found by looking, or null with too few sessions to look.</summary>
        public LateSlowdownResult? Searched { get; }

        /// <summary>A step after set 1 and a first set that is always too fast are one shape.</summary>
        public bool LooksLikeFastStart => After == 1 || Searched is { AfterSet: 1, IsMoreThanSteadyDrift: true };

        public int After => Late.AfterSet;

        public int Sets => Profiles[0].Length;

        public double Alpha => Options.Level.Alpha / 2;

        public double Matters => Options.Matters.Value / 100 * MeanSet;

        /// <summary>A contrast of the sets at b over sessions; where b was picked, the limits hold for all sets together.</summary>
        public Estimate Over(Func<int, int, double[]> weights, double factor, Unit unit, string method)
        {
            var own = weights(Sets, After);
            var choices = Late.Choice == BreakChoice.FoundBySearch ? EffectiveChoices.Of(Contrasts.Every(Sets, weights), Profiles.Length, Options.Level) : 1;
            return TInterval.OfMean([.. Profiles.Select(profile => factor * Contrasts.Apply(own, profile))], unit, Options.Level, method, choices: choices);
        }
    }

    /// <summary>A candidate before the p-values are adjusted together.</summary>
    private sealed record Candidate(ExplanationCause Cause, string Name, Answer<Estimate> Effect, Answer<Estimate> Accounts, string Separates)
    {
        /// <summary>p-value before adjustment; null where the candidate is not tested.</summary>
        public double? PValue { get; init; }

        /// <summary>What the p-value is of.</summary>
        public string Test { get; init; } = "";

        /// <summary>The most seconds it may add, other candidates of its kind held equal; null where not known.</summary>
        public double? Largest { get; init; }

        /// <summary>A standing that does not come from the p-value.</summary>
        public ExplanationStanding? Standing { get; init; }

        /// <summary>Whether another candidate has the same shape in these data.</summary>
        public bool IsAmbiguous { get; init; }

        public IReadOnlyList<string> Supports { get; init; } = [];

        public IReadOnlyList<string> Contradicts { get; init; } = [];
    }
}
