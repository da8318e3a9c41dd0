using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Week on week: who in the squad changed, when many athletes are looked at together.</summary>
public static class SquadChanges
{
    /// <summary>Compares every athlete's test of one week with the mean of up to three tests before.</summary>
    /// <remarks>
    /// Each row as <see cref="AthleteChange"/>. Two-sided p_i = 2 T(-|D_i| / SE), or minimum-effect p_i = T((D_i + S) / SE); adjusted
    /// p_(i) = min over j >= i of min(1, I p_(j) / j), I the athletes with a change (Benjamini and Hochberg 1995, J R Stat Soc B 57:289-300, from memory). Of those
    /// flagged, expect at most a share q false. The shared typical error makes the p-values positively dependent; the procedure holds.
    /// Assumes independent tests and one typical error for the squad.
    /// </remarks>
    /// <param name="sessions">Sessions of the whole squad, in any order.</param>
    /// <param name="typicalError">The noise of one session total.</param>
    /// <param name="worthwhile">The smallest worthwhile change S.</param>
    /// <param name="options">Week, baseline, flags; null for the defaults.</param>
    /// <returns>The rows, or <see cref="Refusal.TooFewSessions"/> with no eligible session in the week, or <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<SquadChangesResult> Fit(IReadOnlyList<Session> sessions, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, SquadChangesOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        ArgumentNullException.ThrowIfNull(worthwhile);
        options ??= new SquadChangesOptions();
        return SessionSelection.Of(sessions, options.Change.Selection).Match(selection => Of(selection, typicalError, worthwhile, options), refusal => refusal);
    }

    private static Answer<SquadChangesResult> Of(SessionSelection selection, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, SquadChangesOptions options)
    {
        if (selection.Sessions.Count == 0) return new NotEstimable("the squad's changes", Refusal.TooFewSessions, 1, 0, "eligible sessions");
        var week = TestSeries.WeekOf(options.Week ?? selection.Sessions[^1].Date);
        var answers = selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).OrderBy(own => own.Key, StringComparer.Ordinal)
            .Select(own => new SquadChangeRow(own.Key, Change([.. own], week, typicalError, worthwhile, options), null, false)).ToList();
        if (answers.TrueForAll(row => !row.Change.IsEstimated) && !selection.Sessions.Any(session => TestSeries.WeekOf(session.Date) == week))
            return new NotEstimable("the squad's changes", Refusal.TooFewSessions, 1, 0, "eligible sessions in the week");
        return Of(answers, TestSeries.MondayOf(options.Week ?? selection.Sessions[^1].Date), selection, options, selection.Notes);
    }

    /// <summary>Adjusts the p-values of the rows together, and adds their mean.</summary>
    internal static SquadChangesResult Of(List<SquadChangeRow> answers, DateOnly from, SessionSelection selection, SquadChangesOptions options, IEnumerable<string> notes)
    {
        var rows = Adjusted(answers, options);
        double[] changes = [.. rows.Where(row => row.Change.IsEstimated).Select(row => row.Change.GetOrThrow().Change.Value)];
        var log = options.Change.Scale == Scale.Log;
        return new SquadChangesResult
        {
            WeekFrom = from,
            Rows = rows,
            MeanChange = changes.Length < 3
                ? new NotEstimable("the mean change", Refusal.TooFewAthletes, 3, changes.Length, "athletes with a change")
                : TInterval.OfMean(log ? [.. changes.Select(percent => Math.Log(1 + percent / 100))] : changes, log ? Unit.Percent : Unit.Seconds, options.Change.Level, "one-sample t over athletes"),
            Flag = options.Flag,
            FalseShare = options.FalseShare,
            Selection = selection,
            Notes =
            [
                FormattableString.Invariant($"{changes.Length} athletes looked at. Of those flagged, expect at most {options.FalseShare.Value:0.#} % false."),
                "Flags take the number of athletes into account; verdicts do not.",
                .. notes,
            ],
        };
    }

    private static Answer<AthleteChangeResult> Change(IReadOnlyList<Session> own, int week, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, SquadChangesOptions options)
    {
        var later = own.LastOrDefault(session => TestSeries.WeekOf(session.Date) == week);
        if (later is null) return new NotEstimable("the change", Refusal.TooFewSessions, 1, 0, "eligible sessions in the week");
        IReadOnlyList<Session> before = [.. own.Where(session => TestSeries.WeekOf(session.Date) < week && (options.BaselineUntil is null || session.Date <= options.BaselineUntil)).TakeLast(options.Change.BaselineTests)];
        return before.Count == 0
            ? new NotEstimable("the change", Refusal.TooFewSessions, 1, 0, "eligible sessions before the week")
            : AthleteChange.Between(before, [later], typicalError, worthwhile, options.Change);
    }

    private static IReadOnlyList<SquadChangeRow> Adjusted(List<SquadChangeRow> rows, SquadChangesOptions options)
    {
        var estimated = rows.FindAll(row => row.Change.IsEstimated);
        var adjusted = MultipleTesting.BenjaminiHochberg([.. estimated.Select(row => row.Change.GetOrThrow()).Select(change =>
            options.Flag == FlaggedChange.FasterThanWorthwhile ? change.FasterThanWorthwhilePValue.Value : change.Change.PValue!.Value)]);
        var method = $"{(options.Flag == FlaggedChange.AnyChange ? "two-sided" : "minimum-effect")} p-value, Benjamini-Hochberg over {estimated.Count} athletes";
        var next = 0;
        return [.. rows.Select(row => row.Change.IsEstimated
            ? row with { AdjustedPValue = new Estimate(adjusted[next], Unit.Probability, estimated.Count, method), IsFlagged = adjusted[next++] <= options.FalseShare.Value / 100 }
            : row)];
    }
}
