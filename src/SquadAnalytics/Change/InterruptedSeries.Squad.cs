using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>The squad's series: one value for each week in which somebody tested.</summary>
public static partial class InterruptedSeries
{
    /// <summary>The same for the squad's mean total of each week.</summary>
    /// <remarks>
    /// Who came changes a plain mean: a week without the fastest looks slow. By default the weeks are therefore compared within athletes: week effects of W_iw = a_i + b_w + e by least squares, W_iw the total of athlete i in week w, shown as
    /// the mean that the week would have had with everybody there. Assumes that weeks act alike on all. Plain means on request, in seconds as all the rest. Source: two-way least squares, textbook; the series as in <see cref="Fit"/>.
    /// </remarks>
    /// <param name="sessions">Sessions of the squad, in any order.</param>
    /// <param name="from">First day of the second segment, named in advance; its week counts from Monday.</param>
    /// <param name="options">Level, lag, plain means, selection; null for the defaults.</param>
    /// <returns>As <see cref="Fit"/>, with weeks for tests, or <see cref="Refusal.NotComparable"/> where no athlete links some weeks to the others, <see cref="Refusal.TooManyObservations"/> above 301 weeks compared within athletes.</returns>
    /// <exception cref="ArgumentException">The lag is not below the number of weeks.</exception>
    public static Answer<InterruptedSeriesResult> FitSquad(IReadOnlyList<Session> sessions, DateOnly from, InterruptedSeriesOptions? options = null)
    {
        options ??= new InterruptedSeriesOptions();
        return SessionSelection.Of(sessions, options.Selection).Match(
            selection => (options.PlainMeans ? new Answer<IReadOnlyList<DatedTotal>>(PlainMeans(selection)) : AsIfAllCame(selection)).Match(
                weeks => Of(weeks, TestSeries.MondayOf(from), options, selection,
                    [options.PlainMeans ? "Weekly means of those who came: who came changes the mean." : "Weeks are compared within athletes, as if everybody had come to each."]),
                refusal => refusal),
            refusal => refusal);
    }

    private static IReadOnlyList<DatedTotal> PlainMeans(SessionSelection selection) =>
        [.. selection.Sessions.GroupBy(session => TestSeries.MondayOf(session.Date)).OrderBy(week => week.Key).Select(week => new DatedTotal(week.Key, Descriptive.Mean([.. week.Select(Total)])))];

    private static Answer<IReadOnlyList<DatedTotal>> AsIfAllCame(SessionSelection selection)
    {
        var athletes = selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).Select(own => own.ToArray()).ToList();
        DateOnly[] weeks = [.. selection.Sessions.Select(session => TestSeries.MondayOf(session.Date)).Distinct().Order()];
        if (weeks.Length < 2 || selection.Sessions.Count <= weeks.Length) return new Answer<IReadOnlyList<DatedTotal>>(PlainMeans(selection));
        if (weeks.Length - 1 > RegressionDesign.MostColumns) return NotEstimable.TooMany("the squad's weekly series", RegressionDesign.MostColumns + 1, weeks.Length, "weeks with tests");

        // Athletes are swept out of totals and week columns, so that the design has one column for each week after the first.
        double[] Swept(Func<Session, double> value) => [.. athletes.SelectMany(own =>
        {
            var mean = own.Average(value);
            return own.Select(session => value(session) - mean);
        })];
        var design = RegressionDesign.WithoutIntercept(selection.Sessions.Count);
        foreach (var week in weeks.Skip(1)) design = design.Add(FormattableString.Invariant($"{week:yyyy-MM-dd}"), Swept(session => TestSeries.MondayOf(session.Date) == week ? 1 : 0));
        return LeastSquares.Fit(Swept(Total), design).Match<Answer<IReadOnlyList<DatedTotal>>>(
            fit =>
            {
                if (fit.AliasedColumns.Count > 0) return new NotEstimable("the squad's weekly series", Refusal.NotComparable, "athletes who link every week to the others", $"{fit.AliasedColumns.Count} weeks that nobody links");
                double[] effects = [0, .. fit.Coefficients.Select(effect => effect.Value)];
                var levels = athletes.Average(own => own.Average(session => Total(session) - effects[Array.BinarySearch(weeks, TestSeries.MondayOf(session.Date))]));
                return new Answer<IReadOnlyList<DatedTotal>>([.. weeks.Select((week, w) => new DatedTotal(week, levels + effects[w]))]);
            },
            refusal => refusal);
    }

    private static double Total(Session session) => session.Total.GetOrThrow().Value;
}
