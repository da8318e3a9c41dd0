using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>Who is in a study: counts of small groups are withheld.</summary>
    public static Table Participants(SessionSelection selection, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(selection);
        ArgumentNullException.ThrowIfNull(squad);
        if (selection.Sessions.Count == 0) throw new ArgumentException($"There is no test to analyse: {selection}", nameof(selection));
        var athletes = selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).Select(own => (Athlete: squad.Athlete(own.Key), Tests: own.Count())).ToList();
        var last = selection.Sessions[^1].Date;
        double[] ages = [.. athletes.Where(item => item.Athlete.BirthYear is not null).Select(item => (double)(last.Year - item.Athlete.BirthYear!.Value))];
        TableCell Few(int count) => count is > 0 and < SmallGroups.DefaultThreshold ? $"fewer than {Count(SmallGroups.DefaultThreshold)}" : Count(count);
        return new Table(
            "Participants",
            [new("measure"), TableColumn.Figures("value")],
            [
                ["athletes with an eligible test", Count(athletes.Count)],
                .. Enum.GetValues<Sex>().Select(sex => (Sex: sex, Number: athletes.Count(item => item.Athlete.Sex == sex))).Where(item => item.Number > 0).Select(item => (IReadOnlyList<TableCell>)[$"sex: {item.Sex.Words()}", Few(item.Number)]),
                ["juniors", Few(athletes.Count(item => item.Athlete.IsJuniorOn(last)))],
                ["age in the year of the last test, mean (SD), years", ages.Length < SmallGroups.DefaultThreshold ? TableCell.Nothing : $"{NumberFormat.Fixed(ages.Average(), 1)} ({NumberFormat.Fixed(Statistics.Descriptive.StandardDeviation(ages), 1)})"],
                ["eligible tests", Count(selection.Sessions.Count)],
                ["tests of an athlete, fewest to most", $"{Count(athletes.Min(item => item.Tests))} to {Count(athletes.Max(item => item.Tests))}"],
                ["first and last test", $"{Date(selection.Sessions[0].Date)} to {Date(last)}"],
            ])
        {
            Notes = [$"Counts of fewer than {Count(SmallGroups.DefaultThreshold)} athletes are withheld."],
        };
    }

    /// <summary>From the sessions in the logbook to those analysed: every exclusion with its reason.</summary>
    /// <param name="selection">The selection.</param>
    /// <param name="sessions">The sessions that it was made from.</param>
    public static Table Exclusions(SessionSelection selection, IReadOnlyList<Session> sessions)
    {
        ArgumentNullException.ThrowIfNull(selection);
        ArgumentNullException.ThrowIfNull(sessions);
        var named = selection.VoidLeftOut + selection.NotStartedLeftOut + selection.OtherProtocolsLeftOut + selection.FamiliarisationDropped + selection.IncompleteLeftOut;
        var reasons = sessions.Where(session => session.IsVoid).Select(session => session.VoidReason!).Distinct(StringComparer.Ordinal).ToList();
        return new Table(
            "From the sessions in the logbook to those analysed",
            [new("step"), TableColumn.Figures("sessions"), new("reason")],
            [
                ["in the logbook", Count(sessions.Count), TableCell.Nothing],
                ["left out: void", Count(selection.VoidLeftOut), reasons.Count == 0 ? TableCell.Nothing : Sentences.List(reasons)],
                ["left out: not started", Count(selection.NotStartedLeftOut), "no set was started"],
                ["left out: other protocol", Count(selection.OtherProtocolsLeftOut), "totals of different tests are not comparable"],
                [$"left out: first {Count(selection.Options.Familiarisation)} of each athlete", Count(selection.FamiliarisationDropped), "familiarisation: the test is still being learnt"],
                ["left out: other dates", Count(sessions.Count - named - selection.Sessions.Count), "outside the dates chosen"],
                ["left out: incomplete", Count(selection.IncompleteLeftOut), "a set without a time; nothing is imputed"],
                ["analysed", Count(selection.Sessions.Count), TableCell.Nothing],
            ]);
    }

    /// <summary>How reliable the session total is.</summary>
    public static Table Reliability(Answer<TypicalErrorResult> noise, Answer<IntraclassCorrelationResult> correlation, SmallestWorthwhileChange worthwhile, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(noise);
        ArgumentNullException.ThrowIfNull(correlation);
        ArgumentNullException.ThrowIfNull(worthwhile);
        ArgumentNullException.ThrowIfNull(format);
        IReadOnlyList<string> Levels() =>
        [
            .. new[] { noise.Match<ConfidenceLevel?>(found => found.Estimate.ConfidenceLevel, _ => null), correlation.Match<ConfidenceLevel?>(found => found.Agreement.ConfidenceLevel, _ => null) }
                .OfType<ConfidenceLevel>().Distinct().Select(level => level.ToString()),
        ];
        return new Table(
            "Reliability of the session total",
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("degrees of freedom"), TableColumn.Figures("p")],
            [
                Row("typical error", noise.Select(found => found.Estimate), format),
                Row("coefficient of variation", noise.Match(found => found.Variation, refused => refused), format),
                Row("intraclass correlation, agreement ICC(A,1)", correlation.Select(found => found.Agreement), format),
                Row("intraclass correlation, consistency ICC(C,1)", correlation.Select(found => found.Consistency), format),
                Row("minimal detectable change of one athlete", noise.Select(found => MinimalDetectableChange.Fit(found)), format),
                Row("smallest worthwhile change", worthwhile.Estimate, format),
            ])
        {
            OverAthletes = new[] { noise.Match<int?>(found => found.Athletes, _ => null), correlation.Match<int?>(found => found.Athletes, _ => null) }.Min(),
            Notes =
            [
                $"Intervals: {Sentences.List(Levels())}. {worthwhile}.",
                .. noise.Match<IReadOnlyList<string>>(found => [$"Typical error within windows of at most four consecutive tests, nearly equal in length: {Sentences.Plural(found.Athletes, "athlete")}, {Sentences.Plural(found.Windows, "window")}. {found.Estimate.Notes[0]}"], _ => []),
                .. correlation.Match<IReadOnlyList<string>>(found => [$"Intraclass correlations: {Sentences.Plural(found.Athletes, "athlete")} with all of the latest {Sentences.Plural(found.Tests, "test")}; they depend on how mixed the squad is."], _ => []),
            ],
        }.WithoutEmptyColumns();
    }
}
