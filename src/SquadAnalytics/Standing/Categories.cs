using System.Globalization;

namespace SquadAnalytics.Standing;

/// <summary>Age group, sex and weight class of athletes, looked up for a test date in the dated tables that the club entered.</summary>
public static class Categories
{
    /// <summary>Looks up the categories of every athlete of the squad.</summary>
    /// <remarks>
    /// Of a federation's table the rows with the latest valid-from date not after the test date apply. Age is that reached in the calendar year. Body mass is the latest one written down from a
    /// number of days before the test to the test day; a class holds masses above its lower and up to its upper limit. Federations revise their classes: the tables are data of the logbook, and
    /// none come with the library. What is not written down stays unknown. Categories are for comparing like with like; no norms are carried from one to another. Assumes that the tables were entered as the federation has them. Source: common practice, no source.
    /// </remarks>
    /// <param name="squad">The squad with its tables of age groups and weight classes, and its days.</param>
    /// <param name="date">The test date.</param>
    /// <param name="options">Federation, days for body mass; null for the defaults.</param>
    /// <returns>One row per athlete, in the order of the squad.</returns>
    /// <exception cref="ArgumentException">The logbook holds tables of several federations and none is named, or not the one that is; or groups or classes that apply overlap.</exception>
    public static IReadOnlyList<AthleteCategory> Of(Squad squad, DateOnly date, CategoryOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(squad);
        options ??= new CategoryOptions();
        var federation = Federation(squad, options);
        var groups = Applicable(squad.AgeGroups.Where(group => group.Federation == federation), group => group.ValidFrom, date);
        var classes = Applicable(squad.WeightClasses.Where(weight => weight.Federation == federation), weight => weight.ValidFrom, date);
        Check(groups, classes);
        var masses = squad.Contexts.Where(day => day.BodyMassKilograms is not null && day.Date <= date && day.Date >= date.AddDays(-options.BodyMassDays))
            .GroupBy(day => day.AthleteId, StringComparer.Ordinal).ToDictionary(own => own.Key, own => own.MaxBy(day => day.Date)!, StringComparer.Ordinal);
        return [.. squad.Athletes.Select(athlete => Row(athlete, date, groups, classes, masses.GetValueOrDefault(athlete.Id), options))];
    }

    private static AthleteCategory Row(Athlete athlete, DateOnly date, IReadOnlyList<AgeGroup> groups, IReadOnlyList<WeightClass> classes, DayContext? day, CategoryOptions options)
    {
        var unknown = new List<string>();
        T? Missing<T>(string why)
            where T : class
        {
            unknown.Add(why);
            return null;
        }

        var group = groups.Count == 0 ? Missing<AgeGroup>("age group: no table applies on that day")
            : athlete.BirthYear is not { } born ? Missing<AgeGroup>("age group: the year of birth is not written down")
            : groups.FirstOrDefault(row => row.Covers(date.Year - born)) ?? Missing<AgeGroup>(string.Create(CultureInfo.InvariantCulture, $"age group: the table has none for age {date.Year - born}"));
        if (athlete.Sex == Sex.Unknown) unknown.Add("sex: not entered");
        var weight = classes.Count == 0 ? Missing<WeightClass>("weight class: no table applies on that day")
            : day is null ? Missing<WeightClass>(string.Create(CultureInfo.InvariantCulture, $"weight class: no body mass is written down in the {options.BodyMassDays} days before"))
            : classes.FirstOrDefault(row => IsFor(row, athlete, group) && row.Covers(day.BodyMassKilograms!.Value)) ?? Missing<WeightClass>("weight class: the table has none for this sex, age group and body mass");
        return new AthleteCategory { AthleteId = athlete.Id, Date = date, Sex = athlete.Sex, AgeGroup = group, WeightClass = weight, BodyMassOn = day?.Date, Unknown = unknown };
    }

    private static bool IsFor(WeightClass row, Athlete athlete, AgeGroup? group) => (row.Sex == Sex.Unknown || row.Sex == athlete.Sex) && (row.AgeGroup is null || row.AgeGroup == group?.Name);

    private static string? Federation(Squad squad, CategoryOptions options)
    {
        var known = squad.AgeGroups.Select(group => group.Federation).Concat(squad.WeightClasses.Select(weight => weight.Federation)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (options.Federation is { } named && !known.Contains(named)) throw new ArgumentException($"There is no table of '{named}'. Tables of: {string.Join(", ", known.DefaultIfEmpty("nobody"))}.", nameof(options));
        if (options.Federation is null && known.Count > 1) throw new ArgumentException($"There are tables of several federations; name one of {string.Join(", ", known)}.", nameof(options));
        return options.Federation ?? known.FirstOrDefault();
    }

    private static IReadOnlyList<T> Applicable<T>(IEnumerable<T> rows, Func<T, DateOnly> validFrom, DateOnly date)
    {
        var applicable = rows.Where(row => validFrom(row) <= date).ToList();
        return applicable.Count == 0 ? [] : applicable.FindAll(row => validFrom(row) == applicable.Max(validFrom));
    }

    private static void Check(IReadOnlyList<AgeGroup> groups, IReadOnlyList<WeightClass> classes)
    {
        for (var i = 0; i < groups.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (groups[i].Covers(groups[j].FromAge) || groups[j].Covers(groups[i].FromAge)) throw new ArgumentException($"Age groups overlap: {groups[j]} and {groups[i]}.", nameof(groups));
            }
        }

        for (var i = 0; i < classes.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (AreForOneAthlete(classes[i], classes[j]) && Overlap(classes[i], classes[j])) throw new ArgumentException($"Weight classes overlap: {classes[j]} and {classes[i]}.", nameof(classes));
            }
        }
    }

    private static bool AreForOneAthlete(WeightClass one, WeightClass other) =>
        (one.Sex == Sex.Unknown || other.Sex == Sex.Unknown || one.Sex == other.Sex) && (one.AgeGroup is null || other.AgeGroup is null || one.AgeGroup == other.AgeGroup);

    private static bool Overlap(WeightClass one, WeightClass other) =>
        (one.AboveKilograms ?? 0) < (other.UpToKilograms ?? double.MaxValue) && (other.AboveKilograms ?? 0) < (one.UpToKilograms ?? double.MaxValue);
}
