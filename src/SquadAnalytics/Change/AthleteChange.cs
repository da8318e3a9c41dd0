using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Did this athlete really change? Estimate, interval and verdict against the noise of the test.</summary>
public static class AthleteChange
{
    private const int NeededDegrees = 5;

    /// <summary>The change from the tests before to the latest test.</summary>
    /// <remarks>Formula and unit as in <see cref="Between"/>. Assumes independent tests with the same noise before and after, normal, and that the typical error is this athlete's too. Sources: Hopkins 2000,
    /// Sports Med 30:1-15; Hopkins 2004, Sportscience 8:1-7; Swinton et al. 2018, Front Nutr 5:41.</remarks>
    /// <param name="sessions">Sessions of one athlete; the latest eligible one is held against the mean of up to three before it.</param>
    /// <param name="typicalError">The noise of one session total, from tests before the later ones: a true change inside it widens the interval.</param>
    /// <param name="worthwhile">The smallest worthwhile change S: in seconds, or in percent on the scale of logarithms.</param>
    /// <param name="options">Scale, level, baseline, selection; null for the defaults.</param>
    /// <returns>The change, or <see cref="Refusal.TooFewSessions"/> below 2 eligible sessions, <see cref="Refusal.MixedProtocols"/>, or what <see cref="Between"/> refuses.</returns>
    public static Answer<AthleteChangeResult> Fit(IReadOnlyList<Session> sessions, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, AthleteChangeOptions? options = null)
    {
        options ??= new AthleteChangeOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(
            selection => selection.Sessions.Count < 2
                ? new NotEstimable("the change", Refusal.TooFewSessions, 2, selection.Sessions.Count, "eligible sessions")
                : Between([.. selection.Sessions.SkipLast(1).TakeLast(options.BaselineTests)], [selection.Sessions[^1]], typicalError, worthwhile, options)
                    .Select(result => result with { Change = result.Change.WithNotes(selection.Notes) }),
            refusal => refusal);
    }

    /// <summary>The change between two sets of tests as they are given, without further selection.</summary>
    /// <remarks>
    /// D = mean(later) - mean(baseline) of the session totals, in seconds, SE = TE √(1/m1 + 1/m2), TE the typical error, m1 and m2 the tests earlier and later, t interval with the degrees of freedom of TE. On
    /// logarithms D is reported as 100 (exp(D) - 1) percent. Sources: Hopkins 2000, Sports Med 30:1-15, and 2004, Sportscience 8:1-7; Swinton et
    /// al. 2018, Front Nutr 5:41. The verdict: <see cref="ChangeVerdicts"/>. Chances are posterior probabilities only under a flat prior;
    /// verdicts in words of chance ("possibly", "likely") are left out because they trade false positives for misses without saying so
    /// (Welsh and Knight 2015, Med Sci Sports Exerc 47:874-884; Lohse et al. 2020, PLoS ONE 15:e0235318; the defence: Hopkins and
    /// Batterham 2018, Sportscience 22:19-29).
    /// Assumes independent tests with the same noise before and after, normal, and that the typical error is this athlete's too.
    /// </remarks>
    /// <param name="baseline">Earlier complete sessions of one athlete; 1 or more.</param>
    /// <param name="later">Later complete sessions of the same athlete; 1 or more.</param>
    /// <param name="typicalError">The noise of one session total, from tests before the later ones: a true change inside it widens the interval.</param>
    /// <param name="worthwhile">The smallest worthwhile change S.</param>
    /// <param name="options">Scale, level, chances; selection and the number of baseline tests do not apply.</param>
    /// <returns>The change, or <see cref="Refusal.TooFewSessions"/>, <see cref="Refusal.IncompleteSession"/>, <see cref="Refusal.MixedProtocols"/>,
    /// <see cref="Refusal.TooFewPairs"/> where the typical error has fewer than 5 degrees of freedom, <see cref="Refusal.NotComparable"/> on logarithms where it was entered in seconds.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, the error is not of session totals, or S is in another unit.</exception>
    public static Answer<AthleteChangeResult> Between(
        IReadOnlyList<Session> baseline, IReadOnlyList<Session> later, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, AthleteChangeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        ArgumentNullException.ThrowIfNull(later);
        ArgumentNullException.ThrowIfNull(typicalError);
        ArgumentNullException.ThrowIfNull(worthwhile);
        options ??= new AthleteChangeOptions();
        var unit = options.Scale == Scale.Log ? Unit.Percent : Unit.Seconds;
        worthwhile.RequireUnit(unit, nameof(worthwhile));
        if (typicalError.Measure != SessionMeasure.Total) throw new ArgumentException($"The typical error must be of the session total, not of the {typicalError.Measure.Words()}.", nameof(typicalError));
        if (baseline.Count == 0 || later.Count == 0) return new NotEstimable("the change", Refusal.TooFewSessions, 2, baseline.Count + later.Count, "sessions, earlier and later");
        IReadOnlyList<Session> all = [.. baseline, .. later];
        if (all.Select(session => session.AthleteId).Distinct(StringComparer.Ordinal).Count() > 1) throw new ArgumentException("The sessions belong to more than one athlete.", nameof(later));
        if (all.FirstOrDefault(session => !session.IsComplete) is { } incomplete) return new NotEstimable("the change", Refusal.IncompleteSession, incomplete.Protocol.Sets, incomplete.TimesSeconds.Count, "timed sets");
        if (all.Select(session => session.Protocol.Key).Distinct(StringComparer.Ordinal).Count() > 1) return new NotEstimable("the change", Refusal.MixedProtocols, "sessions of one protocol", "protocols that are not comparable");
        if (typicalError.DegreesOfFreedom < NeededDegrees)
            return new NotEstimable("the change", Refusal.TooFewPairs, "a typical error with 5 degrees of freedom", FormattableString.Invariant($"{typicalError.DegreesOfFreedom:0.#} degrees of freedom"));
        if (options.Scale == Scale.Log && typicalError.Variation.Refusal is { } refused) return refused;
        return Of(baseline, later, typicalError, worthwhile, options, unit);
    }

    private static AthleteChangeResult Of(
        IReadOnlyList<Session> baseline, IReadOnlyList<Session> later, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, AthleteChangeOptions options, Unit unit)
    {
        var log = options.Scale == Scale.Log;
        double Mean(IReadOnlyList<Session> sessions) => Descriptive.Mean([.. sessions.Select(TestSeries.Value(SessionMeasure.Total, options.Scale))]);
        var noise = log ? typicalError.LogValue.GetOrThrow() : typicalError.Estimate.Value;
        var s = log ? Math.Log(1 + worthwhile.Estimate.Value / 100) : worthwhile.Estimate.Value;
        var change = Mean(later) - Mean(baseline);
        var standardError = noise * Math.Sqrt(1.0 / baseline.Count + 1.0 / later.Count);
        var df = typicalError.DegreesOfFreedom;
        var faster = StudentTDistribution.Cdf((change + s) / standardError, df);
        var notSlower = StudentTDistribution.Cdf((change - s) / standardError, df);
        Estimate Chance(double probability, string method) => new(probability, Unit.Probability, baseline.Count + later.Count, method) { DegreesOfFreedom = df };
        var chanceFaster = StudentTDistribution.Cdf((-s - change) / standardError, df);
        var chanceSlower = StudentTDistribution.UpperTail((s - change) / standardError, df);
        const string flat = "t distribution, flat prior";
        return new AthleteChangeResult
        {
            AthleteId = later[0].AthleteId,
            Baseline = [.. baseline.OrderBy(session => session.Date).ThenBy(session => session.Occasion)],
            Later = [.. later.OrderBy(session => session.Date).ThenBy(session => session.Occasion)],
            Change = TInterval.Of(change, standardError, df, unit, options.Level, baseline.Count + later.Count, FormattableString.Invariant($"mean of {later.Count} later minus mean of {baseline.Count} earlier tests, squad typical error")),
            Worthwhile = worthwhile,
            TypicalError = log ? typicalError.Variation.GetOrThrow() : typicalError.Estimate,
            FasterThanWorthwhilePValue = Chance(faster, "minimum-effect t test of faster by more than S"),
            EquivalencePValue = Chance(Math.Max(StudentTDistribution.UpperTail((change + s) / standardError, df), notSlower), "two one-sided t tests against ±S"),
            Chances = options.IncludeChances
                ? new ChangeChances(Chance(chanceFaster, flat), Chance(Math.Max(0, 1 - chanceFaster - chanceSlower), flat), Chance(chanceSlower, flat))
                : null,
        };
    }
}
