using SquadAnalytics.Internals;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Typical error and mean change per pair of consecutive tests: does the noise settle, and do athletes still improve by practice?</summary>
public static class ConsecutivePairs
{
    private const int Needed = 3;

    /// <summary>Compares each test with the next, over athletes who took both.</summary>
    /// <remarks>
    /// In the unit of the measure. Per pair: mean change with a t interval; s_d the SD of the differences; TE = s_d / √2 with chi-squared limits, df = athletes - 1. Pooled √(Σ df TE² / Σ df): its
    /// degrees of freedom would be optimistic, so the interval to print is that of <see cref="TypicalError"/>.
    /// Source: Hopkins 2000, Sports Med 30:1-15. <see cref="TypicalErrorOptions.WindowLength"/> and blocks do not apply.
    /// Assumes independent athletes and normal differences.
    /// </remarks>
    /// <returns>The pairs, or <see cref="Refusal.TooFewPairs"/> where no pair has 3 athletes, or <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<ConsecutivePairsResult> Fit(IReadOnlyList<Session> sessions, TypicalErrorOptions? options = null)
    {
        options ??= new TypicalErrorOptions();
        return SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    /// <summary>Differences later minus earlier over athletes who took both tests.</summary>
    internal static double[] Differences(IReadOnlyList<Session> earlier, IReadOnlyList<Session> later, Func<Session, double> value) =>
        [.. TestSeries.CompleteTable([earlier, later], value).Select(pair => pair[1] - pair[0])];

    private static Answer<ConsecutivePairsResult> Of(SessionSelection selection, TypicalErrorOptions options)
    {
        var tests = TestSeries.Tests(selection.Sessions, options.Grouping);
        var value = TestSeries.Value(options.Measure, Scale.Seconds);
        var pairs = new List<ConsecutivePair>();
        double squares = 0;
        int df = 0, most = 0;
        for (var test = 1; test < tests.Count; test++)
        {
            var differences = Differences(tests[test - 1], tests[test], value);
            most = Math.Max(most, differences.Length);
            if (differences.Length >= Needed)
            {
                squares += (differences.Length - 1) * Descriptive.Variance(differences) / 2;
                df += differences.Length - 1;
            }

            pairs.Add(Pair(tests[test - 1].Min(session => session.Date), tests[test].Min(session => session.Date), differences, options));
        }

        if (df == 0) return new NotEstimable("the typical error of consecutive tests", Refusal.TooFewPairs, Needed, most, "athletes who took both tests");
        return new ConsecutivePairsResult
        {
            Pairs = pairs,
            Pooled = new Estimate(Math.Sqrt(squares / df), options.Measure.UnitOf(), df, "pooled over consecutive pairs")
            {
                DegreesOfFreedom = df,
                Notes = ["Neighbouring pairs share a test, so these degrees of freedom are optimistic: no interval. Print that of the typical error.", .. selection.Notes],
            },
            Selection = selection,
        };
    }

    private static ConsecutivePair Pair(DateOnly earlier, DateOnly later, double[] differences, TypicalErrorOptions options)
    {
        if (differences.Length < Needed)
        {
            var refusal = new NotEstimable("the change between two tests", Refusal.TooFewPairs, Needed, differences.Length, "athletes who took both tests");
            return new ConsecutivePair(earlier, later, refusal, refusal);
        }

        var unit = options.Measure.UnitOf();
        return new ConsecutivePair(earlier, later,
            TInterval.OfMean(differences, unit, options.Level, "paired t over athletes, later minus earlier", Scale.Seconds),
            TInterval.OfStandardDeviation(Descriptive.StandardDeviation(differences) / Math.Sqrt(2), differences.Length - 1, unit, options.Level, differences.Length, "SD of paired differences / √2", Scale.Seconds));
    }
}
