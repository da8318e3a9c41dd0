using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Personal bests, and how many of them chance alone would give.</summary>
public static class PersonalBests
{
    /// <summary>The running minimum of the session totals.</summary>
    /// <remarks>
    /// Over complete sessions of one protocol; a tie is not a new best. With no true change test m is a new best with chance 1/m (records of an exchangeable series: Rényi 1962, from
    /// memory), and the expected best still falls, see <see cref="ExpectedDrift"/>. A best that beats the one before by less than the typical error is within test noise.
    /// In seconds. Assumes tests of one protocol; the chance also that they are independent and from one distribution.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="typicalError">The noise of one session total.</param>
    /// <param name="selection">Which sessions to use; null keeps all complete ones, familiarisation included, because a best is a best.</param>
    /// <returns>The bests, or <see cref="Refusal.TooFewSessions"/> without a complete session, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or the error is not of session totals.</exception>
    public static Answer<PersonalBestsResult> Find(IReadOnlyList<Session> sessions, TypicalErrorResult typicalError, SelectionOptions? selection = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        if (typicalError.Measure != SessionMeasure.Total) throw new ArgumentException($"The typical error must be of the session total, not of the {typicalError.Measure.Words()}.", nameof(typicalError));
        return SessionSelection.OfOneAthlete(sessions, selection ?? SelectionOptions.KeepAll).Match<Answer<PersonalBestsResult>>(
            chosen => chosen.Sessions.Count == 0
                ? new NotEstimable("personal bests", Refusal.TooFewSessions, 1, 0, "complete sessions")
                : new PersonalBestsResult
                {
                    AthleteId = chosen.Sessions[0].AthleteId,
                    Bests = Bests(chosen.Sessions, typicalError.Estimate.Value),
                    TypicalError = typicalError.Estimate,
                    Selection = chosen,
                    Notes = ["With no true change test m is a new best with chance 1/m: the best of many tests flatters.", .. chosen.Notes],
                },
            refusal => refusal);
    }

    /// <summary>The bests of every athlete, in the order of their ids; athletes without a complete session are passed over.</summary>
    /// <inheritdoc cref="Find" path="/remarks"/>
    /// <param name="sessions">Sessions of the squad, in any order.</param>
    /// <param name="typicalError">The noise of one session total.</param>
    /// <param name="selection">Which sessions to use; null keeps all complete ones. With several protocols in use it names one.</param>
    /// <returns>One result per athlete, or <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<IReadOnlyList<PersonalBestsResult>> OfSquad(IReadOnlyList<Session> sessions, TypicalErrorResult typicalError, SelectionOptions? selection = null) =>
        SessionSelection.Of(sessions, selection ?? SelectionOptions.KeepAll).Select<IReadOnlyList<PersonalBestsResult>>(chosen =>
            [.. chosen.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).OrderBy(own => own.Key, StringComparer.Ordinal)
                .Select(own => Find([.. own], typicalError).GetOrThrow())]);

    /// <summary>Expected minimum of m independent standard normal numbers: how far the best of m tests lies below the true level, in typical errors.</summary>
    /// <remarks>∫ x m φ(x) (1 - Φ(x))^(m-1) dx, φ and Φ the normal density and distribution, by Simpson's rule over ±12, step 0.02, good to 1e-10. About -0.56 for 2 tests and -1.54 for 10.
    /// Assumes independent normal tests and no true change. Source: definition of order statistics.</remarks>
    /// <param name="tests">m, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Tests is below 1.</exception>
    public static double ExpectedDrift(int tests)
    {
        Require.AtLeast(1, tests);
        if (tests == 1) return 0;
        const int half = 600;
        const double step = 12.0 / half;
        double Term(int k)
        {
            var x = k * step;
            var weight = Math.Abs(k) == half ? 1 : k % 2 == 0 ? 2 : 4;
            return weight * x * tests * NormalDistribution.Density(x) * Math.Pow(NormalDistribution.UpperTail(x), tests - 1);
        }

        return step / 3 * Descriptive.Sum([.. Enumerable.Range(-half, 2 * half + 1).Select(Term)]);
    }

    private static IReadOnlyList<PersonalBest> Bests(IReadOnlyList<Session> tests, double typicalError)
    {
        // Totals are sums of decimals: a difference in the last bits is a tie.
        const double tie = 1e-6;
        var bests = new List<PersonalBest>();
        for (var i = 0; i < tests.Count; i++)
        {
            var total = tests[i].Total.GetOrThrow().Value;
            double? change = bests.Count == 0 ? null : total - bests[^1].TotalSeconds;
            if (change > -tie) continue;
            bests.Add(new PersonalBest(tests[i], i + 1, total, change, 1.0 / (i + 1), ExpectedDrift(i + 1), -change < typicalError));
        }

        return bests;
    }
}
