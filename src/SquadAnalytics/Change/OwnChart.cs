using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Is this test out of line with the athlete's own stable run? An individuals chart.</summary>
public static class OwnChart
{
    /// <summary>Baseline tests for routine use; limits on fewer are provisional.</summary>
    public const int RoutineNeeds = 20;

    private const int BaselineNeeds = 8;
    private const int RunLength = 8;
    private const double RangeWeeks = 2;
    private const double RunWeeks = 3;

    /// <summary>Sets limits on a named baseline, freezes them and holds every eligible test against them.</summary>
    /// <remarks>
    /// <para>Moving ranges |y_i - y_(i-1)|, y in seconds, of consecutive baseline tests at most 2 weeks apart, σ̂ = their mean / 1.128, limits mean ± 3 σ̂. Two rules: one test beyond the limits; eight tests
    /// in a row on one side of the centre, never across a gap above 3 weeks. Further zone rules are left out, because together they give a false signal about every 92 tests against 370 for
    /// the limits alone (Champ and Woodall 1987, Technometrics 29:393-399; from memory), and limits that were estimated do worse.</para>
    /// <para>Not for a series with a trend: chart the residuals instead. Rules: Western Electric 1956, Statistical quality control handbook (from memory).</para>
    /// <para>Assumes independent normal tests about a constant level in the baseline.</para>
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="baseline">The stable stretch, named in advance.</param>
    /// <param name="options">Residuals, selection; null for the defaults.</param>
    /// <returns>The chart, or <see cref="Refusal.TooFewSessions"/> below 8 eligible baseline sessions, <see cref="Refusal.TooFewObservations"/> where no two neighbours are within 2 weeks,
    /// <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>; about a trend also what <see cref="SeasonTrend.Fit"/> refuses.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<OwnChartResult> Fit(IReadOnlyList<Session> sessions, ChartBaseline baseline, OwnChartOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        options ??= new OwnChartOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(selection => Of(selection, baseline, options), refusal => refusal);
    }

    private static Answer<OwnChartResult> Of(SessionSelection selection, ChartBaseline baseline, OwnChartOptions options)
    {
        var tests = selection.Sessions;
        var own = Enumerable.Range(0, tests.Count).Where(i => baseline.Covers(tests[i].Date)).ToArray();
        if (own.Length < BaselineNeeds) return new NotEstimable("the chart limits", Refusal.TooFewSessions, BaselineNeeds, own.Length, $"eligible sessions in {baseline.Name}");
        double[] values = [.. tests.Select(TestSeries.Value(SessionMeasure.Total, Scale.Seconds))];
        if (options.AboutTrend)
        {
            var trend = SeasonTrend.Fit(tests, new SeasonTrendOptions { Selection = SelectionOptions.KeepAll });
            if (trend.Refusal is { } refusal) return refusal;
            values = [.. trend.GetOrThrow().Points.Select(point => point.ResidualSeconds)];
        }

        double[] ranges = [.. own.Skip(1).Where((second, i) => WeeksBetween(tests, own[i], second) <= RangeWeeks).Select(second => Math.Abs(values[second] - values[second - 1]))];
        return IndividualsChart.FromRanges([.. own.Select(i => values[i])], ranges).Select(limits => new OwnChartResult
        {
            AthleteId = tests[0].AthleteId,
            Baseline = baseline,
            BaselineTests = own.Length,
            Limits = limits,
            Points = Points(tests, values, limits, baseline),
            Selection = selection,
            Notes = [.. Notes(own, tests, baseline, options), .. selection.Notes],
        });
    }

    private static IReadOnlyList<ChartPoint> Points(IReadOnlyList<Session> tests, double[] values, IndividualsChart limits, ChartBaseline baseline)
    {
        var beyond = limits.Beyond(values).ToHashSet();
        var points = new List<ChartPoint>();
        var run = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var side = Math.Sign(values[i] - limits.Centre);
            var goesOn = i > 0 && side == Math.Sign(values[i - 1] - limits.Centre) && WeeksBetween(tests, i - 1, i) <= RunWeeks;
            run = side == 0 ? 0 : goesOn ? run + 1 : 1;
            points.Add(new ChartPoint(tests[i], values[i], baseline.Covers(tests[i].Date), beyond.Contains(i), run >= RunLength));
        }

        return points;
    }

    private static double WeeksBetween(IReadOnlyList<Session> tests, int first, int second) => SeasonWeeks.Between(tests[first].Date, tests[second].Date);

    private static IEnumerable<string> Notes(int[] own, IReadOnlyList<Session> tests, ChartBaseline baseline, OwnChartOptions options)
    {
        yield return FormattableString.Invariant($"Limits rest on {own.Length} tests of {baseline} and stay as they are.");
        if (own.Length < RoutineNeeds) yield return $"Provisional: {RoutineNeeds} baseline tests are needed for routine use.";
        if (options.AboutTrend) yield return "Residuals about the athlete's own straight trend over all eligible tests.";
        else if (KendallCorrelation.Fit([.. own.Select(i => (double)tests[i].Date.DayNumber)], [.. own.Select(i => tests[i].Total.GetOrThrow().Value)]).TryGet(out var trend) && trend.PValue < 0.1)
            yield return "The baseline has a trend: chart the residuals about it instead.";
    }
}
