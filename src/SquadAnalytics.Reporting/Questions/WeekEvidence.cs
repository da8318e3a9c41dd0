using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>What was computed about the squad's test of one week. Every answer may be a refusal; the findings then say so.</summary>
public sealed record WeekEvidence
{
    /// <summary>The squad.</summary>
    public required Squad Squad { get; init; }

    /// <summary>Who was due and who came.</summary>
    public required WeekAttendance Attendance { get; init; }

    /// <summary>What was the same for everybody on the test day.</summary>
    public required TestDay Day { get; init; }

    /// <summary>Each athlete's change against the own tests before.</summary>
    public required Answer<SquadChangesResult> Changes { get; init; }

    /// <summary>The bests of every athlete up to and including the week.</summary>
    public required Answer<IReadOnlyList<PersonalBestsResult>> Bests { get; init; }

    /// <summary>The noise of one session total, from tests before the week.</summary>
    public required Answer<TypicalErrorResult> Noise { get; init; }

    /// <summary>How numbers are written.</summary>
    public required NumberFormat Format { get; init; }

    /// <summary>Bests that were set in the week, the first test of an athlete left out.</summary>
    internal IReadOnlyList<PersonalBest> BestsOfTheWeek => Bests.Match<IReadOnlyList<PersonalBest>>(
        all => [.. all.Select(own => own.Current).Where(best => best.ChangeSeconds is not null && best.Session.Date >= Attendance.WeekFrom)],
        _ => []);

    /// <summary>The athlete as labelled on the test day.</summary>
    internal string Label(string athleteId) => Squad.Athlete(athleteId).LabelOn(Attendance.TestDay);
}
