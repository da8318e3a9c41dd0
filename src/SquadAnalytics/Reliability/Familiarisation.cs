using SquadAnalytics.Change;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Reliability;

/// <summary>How many early tests to drop because athletes are still learning the test.</summary>
public static class Familiarisation
{
    private const int Largest = 3;
    private const int Needed = 3;
    private const string Confounded = "Learning and training cannot be separated without a control series.";

    /// <summary>Applies the rule to the athletes' own first, second, third test and so on.</summary>
    /// <remarks>
    /// f is the smallest number from 1 to 3 for which the interval of the mean change from test f+1 to f+2 lies above -S (no worthwhile
    /// improvement left) or contains the mean change per test from test f+2 to the last. If there is none, f = 3 and noted. Changes are
    /// paired over athletes who took both tests, in the measure's unit. The rule is this library's own, no source; two familiarisation tests were best for a repeated-effort cycling test (McGawley and
    /// Bishop 2006, Eur J Appl Physiol 98:383-393).
    /// Assumes independent athletes; practice and training cannot be told apart without a control series.
    /// </remarks>
    /// <param name="sessions">Sessions of the whole squad, in any order.</param>
    /// <param name="worthwhile">The smallest worthwhile change S, in the measure's unit.</param>
    /// <param name="options">Measure, level, selection; null for the defaults.</param>
    /// <returns>The number of tests to drop, or <see cref="Refusal.TooFewPairs"/> where fewer than 3 athletes have a second and a third test, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">S is in another unit than the measure.</exception>
    public static Answer<FamiliarisationResult> Fit(IReadOnlyList<Session> sessions, SmallestWorthwhileChange worthwhile, FamiliarisationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(worthwhile);
        options ??= new FamiliarisationOptions();
        var unit = Sets.SessionMeasures.UnitOf(options.Measure);
        worthwhile.RequireUnit(unit, nameof(worthwhile));
        return SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, worthwhile.Estimate.Value, unit, options), refusal => refusal);
    }

    private static Answer<FamiliarisationResult> Of(SessionSelection selection, double worthwhile, Unit unit, FamiliarisationOptions options)
    {
        var tests = TestSeries.Tests(selection.Sessions, TestGrouping.Ordinal);
        var value = TestSeries.Value(options.Measure, Scale.Seconds);
        var changes = new List<Answer<Estimate>>();
        for (var test = 1; test < tests.Count; test++) changes.Add(Change(ConsecutivePairs.Differences(tests[test - 1], tests[test], value), unit, options.Level));
        if (changes.Count < 2 || !changes[1].IsEstimated)
            return new NotEstimable("familiarisation", Refusal.TooFewPairs, Needed, changes.Count < 2 ? 0 : ConsecutivePairs.Differences(tests[1], tests[2], value).Length, "athletes with a second and a third test");
        var judged = Enumerable.Range(1, Largest).Where(f => f < changes.Count && changes[f].IsEstimated).ToList();
        var settled = judged.Where(f => Settles(changes, f, worthwhile)).Cast<int?>().FirstOrDefault();
        var drop = settled ?? Largest;
        return new FamiliarisationResult
        {
            Drop = drop,
            Settled = settled is not null,
            Changes = changes,
            LaterMinusDropped = LaterMinusDropped(selection, value, drop, unit, options.Level),
            Notes =
            [
                Confounded,
                .. settled is null ? [judged.Count < Largest ? $"Not settled within the {tests.Count} tests there are." : "Still improving after 3 tests."] : Array.Empty<string>(),
                .. selection.Notes,
            ],
        };
    }

    /// <summary>Whether the change from test f+1 to f+2, with index f in the list, shows no worthwhile improvement or none beyond the later trend.</summary>
    private static bool Settles(List<Answer<Estimate>> changes, int f, double worthwhile)
    {
        var change = changes[f].GetOrThrow();
        if (change.Lower > -worthwhile) return true;
        double[] later = [.. changes.Skip(f + 1).Where(answer => answer.IsEstimated).Select(answer => answer.GetOrThrow().Value)];
        return later.Length > 0 && change.Interval!.Value.Contains(later.Average());
    }

    private static Answer<Estimate> Change(double[] differences, Unit unit, ConfidenceLevel level, string method = "paired t over athletes, later minus earlier") => differences.Length < Needed
        ? new NotEstimable("the change between own tests", Refusal.TooFewPairs, Needed, differences.Length, "athletes who took both tests")
        : TInterval.OfMean(differences, unit, level, method, Scale.Seconds);

    private static Answer<Estimate> LaterMinusDropped(SessionSelection selection, Func<Session, double> value, int drop, Unit unit, ConfidenceLevel level) => Change(
        [.. selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).Where(own => own.Count() > drop).OrderBy(own => own.Key, StringComparer.Ordinal)
            .Select(own => own.Skip(drop).Average(value) - own.Take(drop).Average(value))], unit, level, "paired t over athletes, mean of all later tests minus mean of those before");
}
