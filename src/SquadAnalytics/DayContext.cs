namespace SquadAnalytics;

/// <summary>What surrounded training for one athlete on one date. Everything that was not written down is null, never 0.</summary>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="Date">The day.</param>
public sealed record DayContext(string AthleteId, DateOnly Date)
{
    /// <summary>Rating of perceived exertion of the whole training session, 0 to 10 (category-ratio).</summary>
    public double? SessionRpe { get; init; }

    /// <summary>Minutes of training.</summary>
    public double? Minutes { get; init; }

    /// <summary>Sparring rounds before the test on that day.</summary>
    public int? SparringRoundsBefore { get; init; }

    /// <summary>Hours slept in the night before.</summary>
    public double? SleepHours { get; init; }

    /// <summary>Body mass in kilograms.</summary>
    public double? BodyMassKilograms { get; init; }

    /// <summary>Whether the day is confirmed as one of rest, so that its load is 0 and not unknown.</summary>
    public bool IsRestDay { get; init; }
}
