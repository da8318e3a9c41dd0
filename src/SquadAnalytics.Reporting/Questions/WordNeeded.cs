using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>An athlete whom the coach may want to talk to, and about what.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Label">The athlete as labelled in this report.</param>
/// <param name="Reasons">Why, each as a phrase.</param>
/// <param name="WrittenDown">What was written down about the day, beside the usual; empty where nothing stands out.</param>
public sealed record WordNeeded(string AthleteId, string Label, IReadOnlyList<string> Reasons, IReadOnlyList<string> WrittenDown)
{
    private const int DaysPerWeek = 7;
    private const double ShortSleepHours = 1.5;
    private const double MoreSparringRounds = 2;

    /// <summary>Goes through a week: flagged and worthwhile changes, bests beyond test noise, tests not finished, second absences in a row, tests while making weight, and clearances waited for.</summary>
    /// <remarks>Sleep is named where it is 1.5 h or more below the athlete's usual, sparring where it is 2 rounds or more above it: house values to start a talk with, no source.</remarks>
    public static IReadOnlyList<WordNeeded> Of(WeekEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var changes = evidence.Changes.Match(found => found.Rows, _ => []).ToDictionary(row => row.AthleteId, StringComparer.Ordinal);
        var bests = evidence.BestsOfTheWeek.ToDictionary(best => best.Session.AthleteId, StringComparer.Ordinal);
        var words = new List<WordNeeded>();
        foreach (var athlete in evidence.Attendance.Athletes)
        {
            var context = athlete.Session is { } session ? TestContext.Summarize(evidence.Squad, session) : null;
            string[] reasons =
            [
                .. OfPresence(athlete, evidence),
                .. OfChange(changes.GetValueOrDefault(athlete.AthleteId), evidence),
                .. OfBest(bests.GetValueOrDefault(athlete.AthleteId), evidence),
                .. context?.Events.Where(item => item.Kind == EventKind.WeighIn).Take(1).Select(item => $"weigh-in on {Day(item.Date)}: making weight slows a test and adds risk") ?? [],
            ];
            if (reasons.Length > 0) words.Add(new WordNeeded(athlete.AthleteId, evidence.Label(athlete.AthleteId), reasons, context is null ? [] : [.. Circumstances(context)]));
        }

        return words;
    }

    private static IEnumerable<string> OfPresence(AthletePresence athlete, WeekEvidence evidence)
    {
        if (athlete.Bar is { } bar) yield return $"head knock on {Day(bar.Date)}: no conditioning test until cleared by a licensed clinician";
        if (athlete.Session?.Sets.Any(set => set.Status == SetStatus.StoppedForHealth) == true) yield return "stopped for health reasons";
        else if (athlete.Presence is Presence.Incomplete or Presence.NotStarted) yield return athlete.Presence.Words();
        if (athlete.Presence == Presence.Absent && MissedTheOneBefore(athlete, evidence)) yield return $"absent again; last complete test {(athlete.LastComplete is { } last ? Day(last) : "none")}";
    }

    private static bool MissedTheOneBefore(AthletePresence athlete, WeekEvidence evidence) =>
        PreviousTestDay(evidence) is { } previous && (athlete.LastComplete is null || athlete.LastComplete < previous);

    private static DateOnly? PreviousTestDay(WeekEvidence evidence) =>
        evidence.Attendance.Athletes.Select(athlete => athlete.LastComplete).OfType<DateOnly>().Select(date => (DateOnly?)date.AddDays(-(date.DayNumber % DaysPerWeek))).Max();

    private static IEnumerable<string> OfChange(SquadChangeRow? row, WeekEvidence evidence)
    {
        if (row is null || !row.Change.TryGet(out var change)) yield break;
        var isWorthwhile = change.Verdict is ChangeVerdict.FasterWorthwhile or ChangeVerdict.SlowerWorthwhile;
        if (row.IsFlagged || isWorthwhile)
            yield return $"{evidence.Format.Change(change.Change)} than before ({(isWorthwhile ? change.Verdict.Words() : "size unclear")}{(row.IsFlagged ? ", flagged" : "")})";
    }

    private static IEnumerable<string> OfBest(PersonalBest? best, WeekEvidence evidence)
    {
        if (best is { IsWithinTestNoise: false }) yield return $"new best, {evidence.Format.Time(new Seconds(best.TotalSeconds))}: {evidence.Format.Time(new Seconds(-best.ChangeSeconds!.Value))} below the one before, beyond test noise";
    }

    private static IEnumerable<string> Circumstances(TestContextResult context)
    {
        foreach (var measure in context.Measures)
        {
            var stands = measure.Unit switch { "h" => measure.Difference <= -ShortSleepHours, "rounds" => measure.Difference >= MoreSparringRounds, _ => false };
            if (stands) yield return $"{measure.Name} {NumberFormat.Fixed(measure.OnTheDay!.Value, measure.Unit == "h" ? 1 : 0)} {measure.Unit} (usual {NumberFormat.Fixed(measure.Usual!.Value, measure.Unit == "h" ? 1 : 0)})";
        }

        foreach (var bout in context.Events.Where(item => item.Kind == EventKind.Bout)) yield return $"bout on {Day(bout.Date)}";
    }

    private static string Day(DateOnly date) => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
