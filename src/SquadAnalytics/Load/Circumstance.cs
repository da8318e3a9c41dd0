namespace SquadAnalytics.Load;

/// <summary>A circumstance of a test that is compared over an athlete's tests, each with one lag that is named before looking.</summary>
public enum Circumstance
{
    /// <summary>Load of the seven days before the test, rating of perceived exertion times minutes; the test day is not among them.</summary>
    LoadOfSevenDays,

    /// <summary>Hours slept in the night before the test.</summary>
    Sleep,

    /// <summary>Sparring rounds on the day, before the test.</summary>
    Sparring,

    /// <summary>Body mass on the day.</summary>
    BodyMass,

    /// <summary>Air temperature at the test.</summary>
    Temperature,

    /// <summary>Rating of perceived exertion of the test's own session: an outcome of the test, for which a total must never be adjusted.</summary>
    SessionRating,
}

/// <summary>Words and values of circumstances.</summary>
public static class Circumstances
{
    /// <summary>Name with its lag, as it stands in a sentence.</summary>
    public static string Words(this Circumstance circumstance) => circumstance switch
    {
        Circumstance.LoadOfSevenDays => "load of the seven days before",
        Circumstance.Sleep => "sleep the night before",
        Circumstance.Sparring => "sparring before the test",
        Circumstance.BodyMass => "body mass",
        Circumstance.Temperature => "temperature at the test",
        Circumstance.SessionRating => "rating of the session itself",
        _ => throw new ArgumentOutOfRangeException(nameof(circumstance), circumstance, "Not a circumstance of this library."),
    };

    /// <summary>Whether it is recorded during or after the test, so that it is an outcome and no circumstance.</summary>
    public static bool IsOutcome(this Circumstance circumstance) => circumstance == Circumstance.SessionRating;

    /// <summary>Unit of seconds per unit of the circumstance.</summary>
    internal static Unit SlopeUnit(this Circumstance circumstance) => circumstance switch
    {
        Circumstance.LoadOfSevenDays => Unit.SecondsPerLoad,
        Circumstance.Sleep => Unit.SecondsPerHour,
        Circumstance.Sparring => Unit.SecondsPerRound,
        Circumstance.BodyMass => Unit.SecondsPerKilogram,
        Circumstance.Temperature => Unit.SecondsPerDegree,
        _ => throw new ArgumentOutOfRangeException(nameof(circumstance), circumstance, "No total is adjusted for an outcome."),
    };

    /// <summary>Days by athlete and date.</summary>
    internal static Dictionary<string, Dictionary<DateOnly, DayContext>> ByAthlete(IEnumerable<DayContext> days) =>
        days.GroupBy(day => day.AthleteId, StringComparer.Ordinal).ToDictionary(own => own.Key, own => own.ToDictionary(day => day.Date), StringComparer.Ordinal);

    /// <summary>Value before a test, or null where it was not written down.</summary>
    /// <param name="circumstance">A circumstance, not an outcome.</param>
    /// <param name="days">Days of the athlete.</param>
    /// <param name="test">The test.</param>
    internal static double? Of(Circumstance circumstance, Dictionary<DateOnly, DayContext> days, Session test) => circumstance switch
    {
        Circumstance.LoadOfSevenDays => TestContext.LoadBefore(days, test.Date),
        Circumstance.Sleep => days.GetValueOrDefault(test.Date)?.SleepHours,
        Circumstance.Sparring => days.GetValueOrDefault(test.Date)?.SparringRoundsBefore,
        Circumstance.BodyMass => days.GetValueOrDefault(test.Date)?.BodyMassKilograms,
        Circumstance.Temperature => test.TemperatureCelsius,
        _ => throw new ArgumentOutOfRangeException(nameof(circumstance), circumstance, "An outcome of the test does not come before it."),
    };

    /// <summary>The refusal to treat an outcome of the test as a circumstance of it.</summary>
    internal static NotEstimable Refused(this Circumstance outcome, string measure) =>
        new(measure, Refusal.NotComparable, "circumstances that are known before the test", $"the {outcome.Words()}, which is an outcome of it");
}
