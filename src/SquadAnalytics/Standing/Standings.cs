using SquadAnalytics.Change;
using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Standing;

/// <summary>Where everyone stands: recent level, band and best of every athlete with a recent test.</summary>
public sealed record Standings
{
    private Standings(DateOnly on, IReadOnlyList<AthleteStanding> athletes, IReadOnlyList<string> withoutRecentTest, SessionSelection selection) =>
        (On, Athletes, WithoutRecentTest, Selection) = (on, athletes, withoutRecentTest, selection);

    /// <summary>The day.</summary>
    public DateOnly On { get; }

    /// <summary>The athletes, fastest level first. The order is no ranking: levels that lie within noise are not told apart.</summary>
    public IReadOnlyList<AthleteStanding> Athletes { get; }

    /// <summary>Ids of the athletes who have done the test, but not recently.</summary>
    public IReadOnlyList<string> WithoutRecentTest { get; }

    /// <summary>What was used and left out.</summary>
    public SessionSelection Selection { get; }

    /// <summary>Goes through the squad.</summary>
    /// <remarks>
    /// Level = mean of the last m eligible totals within the recent weeks, SE = TE / √m with the degrees of freedom of TE: the noise of the test, not the athlete's change within those
    /// weeks; in seconds. Assumes a level that holds still over the recent weeks. Band: <see cref="ProbableBand"/>. Best: <see cref="PersonalBests"/>, familiarisation included, because a best is a best. Source: Hopkins 2000, Sports Med 30:1-15.
    /// </remarks>
    /// <param name="squad">The squad.</param>
    /// <param name="typicalError">The noise of one session total, in seconds.</param>
    /// <param name="options">Recent tests, day, level, selection; null for the defaults. With several protocols in use the selection names one.</param>
    /// <returns>The athletes, or <see cref="Refusal.TooFewSessions"/> without an eligible test, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The error is not of session totals in seconds.</exception>
    public static Answer<Standings> Summarize(Squad squad, TypicalErrorResult typicalError, StandingsOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(typicalError);
        if (typicalError.Measure != SessionMeasure.Total || typicalError.Estimate.Unit != Unit.Seconds) throw new ArgumentException("The typical error must be of the session total, in seconds.", nameof(typicalError));
        options ??= new StandingsOptions();
        var until = options.Selection with { To = Earlier(options.On, options.Selection.To) };
        return SessionSelection.Of(squad.Sessions, until).Match(selection => Of(squad, selection, typicalError, options), refusal => refusal);
    }

    /// <summary>The ranks of those who may be ranked, with their uncertainty.</summary>
    /// <inheritdoc cref="Ranks.Fit" path="/remarks"/>
    /// <param name="options">Level, draws and seed; null for the defaults.</param>
    /// <param name="withJuniors">Whether juniors are ranked too; not by default, because growth and learning swamp training.</param>
    /// <returns>The ranks, or <see cref="Refusal.TooFewAthletes"/> below 2, or <see cref="Refusal.TooManyObservations"/> above 2,000.</returns>
    public Answer<IReadOnlyList<RankedAthlete>> Rank(RankOptions? options = null, bool withJuniors = false) =>
        Ranks.Fit([.. Athletes.Where(athlete => withJuniors || !athlete.IsJunior).Select(athlete => new AthleteLevel(athlete.AthleteId, athlete.Level))], options);

    /// <summary>Mean levels of groups as they may be shared: small groups withheld, and as many others as it takes so that none is found by subtraction.</summary>
    /// <remarks>One-sample t over the athletes' levels, in seconds. Assumes athletes who are independent of each other. Sources: textbook; <see cref="SmallGroups"/> for what is withheld.</remarks>
    /// <param name="groupOf">The group of an athlete, by id.</param>
    /// <param name="level">Level of the intervals over athletes; 90 % by default.</param>
    /// <returns>One cell per group; its figure refuses with <see cref="Refusal.Suppressed"/> where it is withheld, which a group of one always is.</returns>
    public IReadOnlyList<GroupCell> Groups(Func<string, string> groupOf, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(groupOf);
        GroupCell Cell(string name, IReadOnlyList<AthleteStanding> members)
        {
            double[] levels = [.. members.Select(athlete => athlete.Level.Value)];
            return new GroupCell(name, levels.Length, levels.Length < 2
                ? new NotEstimable($"the mean level of {name}", Refusal.TooFewAthletes, 2, levels.Length, "athletes")
                : TInterval.OfMean(levels, Unit.Seconds, level, "one-sample t over athletes"));
        }

        return SmallGroups.Suppress([.. Athletes.GroupBy(athlete => groupOf(athlete.AthleteId), StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => Cell(group.Key, [.. group]))], wholeIsShared: true);
    }

    /// <summary>Day and number of athletes.</summary>
    public override string ToString() => FormattableString.Invariant($"{On:yyyy-MM-dd}: {Athletes.Count} athletes with a recent test, {WithoutRecentTest.Count} without");

    private static Answer<Standings> Of(Squad squad, SessionSelection selection, TypicalErrorResult typicalError, StandingsOptions options)
    {
        if (selection.Sessions.Count == 0) return new NotEstimable("where everyone stands", Refusal.TooFewSessions, 1, 0, "eligible sessions");
        var on = options.On ?? selection.Sessions[^1].Date;
        var from = on.AddDays(-7 * options.RecentWeeks);
        var keep = SelectionOptions.KeepAll with { Protocol = options.Selection.Protocol, To = on };
        var bests = PersonalBests.OfSquad(squad.Sessions, typicalError, keep).Match(all => all, _ => []).ToDictionary(own => own.AthleteId, StringComparer.Ordinal);
        var rows = new List<AthleteStanding>();
        var without = new List<string>();
        foreach (var own in selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).OrderBy(own => own.Key, StringComparer.Ordinal))
        {
            var recent = own.Where(session => session.Date >= from).TakeLast(options.RecentTests).ToList();
            if (recent.Count == 0 || squad.Athlete(own.Key).Left < on) without.Add(own.Key);
            else rows.Add(Row(squad.Athlete(own.Key), [.. own], recent, bests[own.Key].Current, typicalError, options, on));
        }

        return new Standings(on, [.. rows.OrderBy(row => row.Level.Value)], without, selection);
    }

    private static AthleteStanding Row(Athlete athlete, IReadOnlyList<Session> own, List<Session> recent, PersonalBest best, TypicalErrorResult typicalError, StandingsOptions options, DateOnly on)
    {
        double[] totals = [.. recent.Select(session => session.Total.GetOrThrow().Value)];
        var level = TInterval.Of(Descriptive.Mean(totals), typicalError.Estimate.Value / Math.Sqrt(totals.Length), typicalError.DegreesOfFreedom, Unit.Seconds, options.Level, totals.Length,
            FormattableString.Invariant($"mean of the last {totals.Length} tests, typical error of that mean")) with { PValue = null };
        return new AthleteStanding(athlete.Id, athlete.IsJuniorOn(on), recent[^1].Date, level, ProbableBand.Fit(own, typicalError, options.Band, SelectionOptions.KeepAll), best);
    }

    private static DateOnly? Earlier(DateOnly? one, DateOnly? other) => one is null || other < one ? other : one;
}
