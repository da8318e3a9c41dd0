using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>The findings of one question: what does this week's test say? Who changed, what is noise, who needs a word, who was not there.</summary>
public static class WeekFindings
{
    private const string Rules = "rules for a talk: flagged or worthwhile changes, bests beyond noise, tests not finished, second absence in a row, making weight, clearance waited for";
    private const string ChangeSource = "Hopkins 2000, 2004; Swinton et al. 2018";

    /// <summary>Puts the week in plain words, in the order in which a coach should meet it.</summary>
    public static Findings Of(WeekEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return new Findings(
        [
            .. evidence.Changes.Match(changes => OfChanges(changes, evidence), refused => [Finding.Refused(refused)]),
            .. Bests(evidence),
            .. Words(evidence),
            .. WhoCame(evidence),
            evidence.Noise.Match(noise => Noise(noise, evidence.Format), Finding.Refused),
        ]);
    }

    private static IEnumerable<Finding> OfChanges(SquadChangesResult changes, WeekEvidence evidence)
    {
        yield return Flagged(changes, evidence);
        foreach (var row in changes.Rows.Where(Stands).OrderByDescending(row => row.IsFlagged).ThenBy(row => row.Change.GetOrThrow().Change.Value)) yield return One(row, evidence);
        yield return changes.MeanChange.Match(mean => WholeSquad(mean, evidence), Finding.Refused);
        foreach (var finding in Quiet(changes, evidence)) yield return finding;
    }

    private static bool Stands(SquadChangeRow row) => row.Change.TryGet(out var change) && (row.IsFlagged || change.Verdict is ChangeVerdict.FasterWorthwhile or ChangeVerdict.SlowerWorthwhile);

    private static Finding Flagged(SquadChangesResult changes, WeekEvidence evidence)
    {
        var looked = changes.Rows.Where(row => row.Change.IsEstimated).ToList();
        var flagged = changes.Flagged.Select(row => evidence.Label(row.AthleteId)).ToList();
        var who = flagged.Count == 0 ? "nobody's change stands out" : $"{Sentences.List(flagged)} {(flagged.Count == 1 ? "stands" : "stand")} out";
        var level = looked.Count == 0 ? default : looked[0].Change.GetOrThrow().Change.ConfidenceLevel ?? default;
        var luck = HighlightCount.Expected(Math.Max(1, looked.Count), 1, level);
        var away = looked.Count(row => row.Change.GetOrThrow().Change is { } change && (change.Upper < 0 || change.Lower > 0));
        return new Finding($"Of {Sentences.Plural(looked.Count, "athlete")} looked at, {who} once their number is allowed for.")
        {
            Method = string.Create(CultureInfo.InvariantCulture, $"two-sided p-values adjusted over {looked.Count} athletes; of those flagged at most {changes.FalseShare.Value:0.#} % are expected to be false"),
            Source = "Benjamini and Hochberg 1995",
            Notes = [string.Create(CultureInfo.InvariantCulture, $"Looked at singly, {away} of {looked.Count} intervals lie whole on one side of no change; with no true change anywhere about {luck.Value:0.0} would.")],
        };
    }

    private static Finding One(SquadChangeRow row, WeekEvidence evidence)
    {
        var change = row.Change.GetOrThrow();
        return new Finding(Sentences.Change(evidence.Label(row.AthleteId), change, evidence.Format))
        {
            Estimate = change.Change,
            Source = ChangeSource,
            Notes =
            [
                row.IsFlagged ? $"Flagged: {NumberFormat.PValue(row.AdjustedPValue!.Value)} after adjustment." : $"Not flagged: {NumberFormat.PValue(row.AdjustedPValue!.Value)} after adjustment for the number of athletes looked at.",
                $"With half the smallest worthwhile change the verdict is: {change.VerdictAtHalf.Words()}; with twice: {change.VerdictAtDouble.Words()}.",
            ],
        };
    }

    private static Finding WholeSquad(Estimate mean, WeekEvidence evidence)
    {
        var together = mean.Upper < 0 || mean.Lower > 0;
        return new Finding($"The squad as a whole: {evidence.Format.Change(mean)} than its tests before, {mean.ConfidenceLevel} interval {evidence.Format.ChangeLimits(mean)}.")
        {
            Estimate = mean,
            Source = "one-sample t, textbook",
            OverAthletes = mean.Observations,
            Notes = [together ? "A squad that moves as one may have met another day (heat, floor, watch) as well as become another squad: read single changes against it." : "Whether the whole squad was slower or faster that day is not clear; if it was, that much of each boxer's change is the day.", .. Day(evidence)],
        };
    }

    private static IEnumerable<string> Day(WeekEvidence evidence)
    {
        if (evidence.Day.Changes.Count > 0) yield return $"Another than on the test day before: {Sentences.List(evidence.Day.Changes)}.";
        if (evidence.Day.Measures[0] is { OnTheDay: { } now, Usual: { } usual }) yield return string.Create(CultureInfo.InvariantCulture, $"Temperature {now:0.#} °C, usual {usual:0.#} °C.");
    }

    /// <summary>Those whose change does not stand out: which way they lean, who is steady, who is open.</summary>
    private static IEnumerable<Finding> Quiet(SquadChangesResult changes, WeekEvidence evidence)
    {
        IReadOnlyList<string> Names(Func<ChangeVerdict, bool> fits) =>
            [.. changes.Rows.Where(row => !Stands(row) && row.Change.TryGet(out var change) && fits(change.Verdict)).Select(row => evidence.Label(row.AthleteId))];
        var leaning = new[] { ChangeVerdict.FasterSizeUnclear, ChangeVerdict.SlowerSizeUnclear }.Where(verdict => Names(one => one == verdict).Count > 0)
            .Select(verdict => $"{verdict.Words()}: {Sentences.List(Names(one => one == verdict))}").ToList();
        var steady = Names(verdict => verdict == ChangeVerdict.NoWorthwhileChange);
        var open = Names(verdict => verdict == ChangeVerdict.NotClear);
        if (leaning.Count > 0)
        {
            yield return new Finding($"Looked at singly, {string.Join("; ", leaning)}.")
            {
                Method = "whole interval on one side of no change, but not beyond the smallest worthwhile change",
                Notes = ["Among so many looked at, some lean by luck: take the next test before acting on it."],
            };
        }

        if (steady.Count > 0) yield return new Finding($"No worthwhile change: {Sentences.List(steady)}.") { Method = "whole interval inside plus and minus the smallest worthwhile change", Source = "Schuirmann 1987; Lakens 2017" };
        if (open.Count > 0)
        {
            yield return new Finding($"{Sentences.Capital(ChangeVerdict.NotClear.Words())}: {(open.Count == changes.Rows.Count(row => row.Change.IsEstimated) ? $"all {open.Count} of them" : Sentences.List(open))}.")
            {
                Method = "interval of the change holds no change and reaches beyond the smallest worthwhile change",
                Notes = ["Not told apart from noise is not the same as unchanged: one more test each narrows it."],
            };
        }
    }

    private static IEnumerable<Finding> Bests(WeekEvidence evidence)
    {
        var bests = evidence.BestsOfTheWeek;
        if (bests.Count == 0) yield break;
        string Of(PersonalBest best) => $"{evidence.Label(best.Session.AthleteId)} {evidence.Format.Time(new Seconds(best.TotalSeconds))} (by {evidence.Format.Time(new Seconds(-best.ChangeSeconds!.Value))}, {(best.IsWithinTestNoise ? "within test noise" : "beyond test noise")})";
        var byLuck = bests.Sum(best => best.ChanceWithoutChange);
        yield return new Finding($"New personal bests: {Sentences.List([.. bests.Select(Of)])}.")
        {
            Method = "running minimum of session totals, against the typical error",
            Source = "Rényi 1962 for the chance of a record",
            Notes = [string.Create(CultureInfo.InvariantCulture, $"The best of many tests flatters: with no true change the chance that a boxer's m-th test is a best is 1/m; for these {bests.Count} the chances add up to {byLuck:0.0}.")],
        };
    }

    private static IEnumerable<Finding> Words(WeekEvidence evidence)
    {
        var words = WordNeeded.Of(evidence);
        if (words.Count == 0)
        {
            yield return new Finding($"No boxer meets the rules for a talk. That is no all-clear{(evidence.Attendance.Of(Presence.Absent) is { Count: > 0 } absent ? $": ask {Sentences.List([.. absent.Select(athlete => evidence.Label(athlete.AthleteId))])} why they were absent" : "")}.") { Method = Rules };
            yield break;
        }

        yield return new Finding($"Worth a word: {Sentences.List([.. words.Select(word => word.Label)])}.")
        {
            Method = Rules,
            Notes = [.. words.Select(word => $"{word.Label}: {string.Join("; ", word.Reasons.Concat(word.WrittenDown))}.")],
        };
    }

    private static IEnumerable<Finding> WhoCame(WeekEvidence evidence)
    {
        var attendance = evidence.Attendance;
        string Names(Presence presence) => Sentences.List([.. attendance.Of(presence).Select(athlete => evidence.Label(athlete.AthleteId))]);
        var tested = attendance.Of(Presence.Tested).Count;
        string[] notes = [.. new[] { Presence.Incomplete, Presence.NotStarted, Presence.Void }.Where(presence => attendance.Of(presence).Count > 0).Select(presence => $"{char.ToUpperInvariant(presence.Words()[0])}{presence.Words()[1..]}: {Names(presence)}.")];
        yield return new Finding($"{tested} of the {attendance.Due} who were due did the whole test{(attendance.Of(Presence.Absent).Count == 0 ? "" : $"; absent: {Names(Presence.Absent)}")}.")
        {
            Method = "due: in the squad, with this test in the eight weeks before, not held back",
            Notes = [.. notes, "Who is tired, hurt or making weight stays away more often: the mean of those who came flatters."],
        };
        if (attendance.Of(Presence.Barred).Count > 0)
        {
            yield return new Finding($"Not due because of a head knock without clearance: {Names(Presence.Barred)}.")
            {
                Method = "dated events of the logbook",
                Source = "Patricios et al. 2023",
                Notes = ["No conditioning test, that day or later, until cleared by a licensed clinician."],
            };
        }
    }

    private static Finding Noise(TypicalErrorResult noise, NumberFormat format) => new($"Test noise: the typical error of one session total is {format.WithInterval(noise.Estimate)}, from {Sentences.Plural(noise.Athletes, "athlete")} in the tests before this week.")
    {
        Estimate = noise.Estimate,
        Source = "Hopkins 2000",
        OverAthletes = noise.Athletes,
        Notes = noise.Estimate.Notes,
    };
}
