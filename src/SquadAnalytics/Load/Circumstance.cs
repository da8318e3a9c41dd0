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
        _ => throw new ArgumentOutOfRangeException(nameof(circumstance), circumstance, "Not a circumstance of this library."),
    };

    /// <summary>Value on the day of a test, or null where it was not written down.</summary>
    internal static double? Of(Circumstance circumstance, Dictionary<DateOnly, DayContext> days, DateOnly test) => circumstance switch
    {
        Circumstance.LoadOfSevenDays => TestContext.LoadBefore(days, test),
        Circumstance.Sleep => days.GetValueOrDefault(test)?.SleepHours,
        _ => days.GetValueOrDefault(test)?.SparringRoundsBefore,
    };
}
