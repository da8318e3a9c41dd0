using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reporting.Questions;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>Who was due for the test of a week, and who did it.</summary>
    public static Table Attendance(WeekAttendance attendance, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(attendance);
        ArgumentNullException.ThrowIfNull(squad);
        var decimals = NumberFormat.For(attendance.Athletes.Select(athlete => athlete.Session).OfType<Session>()).EntryDecimals;
        return new Table(
            $"Who came, week of {Date(attendance.WeekFrom)}",
            [new("athlete"), new("this week"), TableColumn.Figures("total", "s"), new("last complete test before")],
            [.. attendance.Athletes.Select(athlete => (IReadOnlyList<TableCell>)
            [
                squad.Athlete(athlete.AthleteId).LabelOn(attendance.TestDay),
                athlete.Presence.Words(),
                athlete.Session is { IsComplete: true, IsVoid: false } session ? TableCell.Figure(session.Total.GetOrThrow().Value, decimals) : TableCell.Nothing,
                athlete.LastComplete is { } last ? Date(last) : "none",
            ])])
        {
            Notes = [$"Due: in the squad on {Date(attendance.TestDay)}, with this test in the eight weeks before, and not held back by a head knock without clearance.", .. NotDue(attendance, squad)],
        };
    }

    /// <summary>Those who have done this test, but not lately, or have left the squad: they are not due, and nobody should wonder where they are.</summary>
    private static IEnumerable<string> NotDue(WeekAttendance attendance, Squad squad)
    {
        var protocols = attendance.Athletes.Select(athlete => athlete.Session?.Protocol.Id).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var listed = attendance.Athletes.Select(athlete => athlete.AthleteId).ToHashSet(StringComparer.Ordinal);
        var names = squad.Athletes.Where(athlete => !listed.Contains(athlete.Id) && squad.SessionsOf(athlete.Id).Any(session => session.Date < attendance.WeekFrom && protocols.Contains(session.Protocol.Id)))
            .Select(athlete => athlete.LabelOn(attendance.TestDay)).ToList();
        return names.Count == 0 ? [] : [$"Not due, without this test in the eight weeks before or no longer in the squad: {Sentences.List(names)}."];
    }

    /// <summary>What was the same for everybody on a test day.</summary>
    public static Table TestDay(TestDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        static TableCell Cell(double? number) => number is { } value ? TableCell.Figure(value, 1) : "not recorded";
        return new Table(
            $"The test day, {Date(day.Date)}, {Sentences.Plural(day.Athletes, "athlete")}",
            [new("circumstance"), new("unit"), TableColumn.Figures("this day"), TableColumn.Figures("usual"), TableColumn.Figures("other days")],
            [.. day.Measures.Select(measure => (IReadOnlyList<TableCell>)[measure.Name, measure.Unit, Cell(measure.OnTheDay), Cell(measure.Usual), Count(measure.OtherTests)])])
        {
            OverAthletes = day.Athletes,
            Notes =
            [
                day.Changes.Count == 0 ? "Timer, place and timing resolution as on the test day before, where recorded." : $"Another than on the test day before: {Sentences.List(day.Changes)}.",
                "Usual: median of the earlier test days.",
            ],
        };
    }

    /// <summary>The personal bests that were set from a day on.</summary>
    /// <param name="bests">The bests of each athlete.</param>
    /// <param name="squad">The squad, for how its athletes are labelled.</param>
    /// <param name="from">First day; earlier bests are left out.</param>
    /// <param name="format">How numbers are written.</param>
    public static Table NewBests(IReadOnlyList<PersonalBestsResult> bests, Squad squad, DateOnly from, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(bests);
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(format);
        var rows = bests.Select(own => own.Current).Where(best => best.ChangeSeconds is not null && best.Session.Date >= from).OrderBy(best => best.ChangeSeconds).ToList();
        return new Table(
            $"Personal bests since {Date(from)}",
            [new("athlete"), new("date"), TableColumn.Figures("total", "s"), TableColumn.Figures("against the best before", "s"), new("test noise"), TableColumn.Figures("chance without any change")],
            [.. rows.Select(best => (IReadOnlyList<TableCell>)
            [
                squad.Athlete(best.Session.AthleteId).LabelOn(best.Session.Date), Date(best.Session.Date),
                TableCell.Figure(best.TotalSeconds, format.EntryDecimals), TableCell.SignedFigure(best.ChangeSeconds!.Value, format.EntryDecimals),
                best.IsWithinTestNoise ? "within" : "beyond", TableCell.Figure(best.ChanceWithoutChange, 2),
            ])])
        {
            Notes =
            [
                rows.Count == 0 ? "Nobody set a new best." : "Chance: that a boxer's m-th test is the best although nothing has changed, 1/m.",
                .. bests.Take(1).Select(own => $"Test noise (typical error): {format.Value(own.TypicalError)}."),
            ],
        };
    }

    /// <summary>Whom the coach may want to talk to, and about what.</summary>
    public static Table Words(IReadOnlyList<WordNeeded> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return new Table(
            "Worth a word",
            [new("athlete"), new("because"), new("written down about the day")],
            [.. words.Select(word => (IReadOnlyList<TableCell>)[word.Label, string.Join("; ", word.Reasons), word.WrittenDown.Count == 0 ? "nothing out of the usual" : string.Join("; ", word.WrittenDown)])])
        {
            Notes = [.. words.Count == 0 ? ["Nobody meets the rules for a talk: a flagged or worthwhile change, a best beyond noise, a test not finished, a second absence in a row, making weight, a clearance waited for. That is no all-clear."] : Array.Empty<string>(), "Sleep is named from 1.5 h below the athlete's usual, sparring from 2 rounds above it: house values to start a talk with. A number is a reason to ask, not an answer."],
        };
    }

    private static string Date(DateOnly date) => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
