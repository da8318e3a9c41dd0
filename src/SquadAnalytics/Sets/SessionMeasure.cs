namespace SquadAnalytics.Sets;

/// <summary>One number that a session is summarised by.</summary>
public enum SessionMeasure
{
    /// <summary>Session total, in seconds: the score, and the best reproduced measure.</summary>
    Total,

    /// <summary>Mean set, in seconds.</summary>
    MeanSet,

    /// <summary>Fastest set, in seconds.</summary>
    BestSet,

    /// <summary>First set, in seconds.</summary>
    FirstSet,

    /// <summary>Last set, in seconds.</summary>
    LastSet,

    /// <summary>Percentage decrement score, in percent.</summary>
    Decrement,

    /// <summary>First to last set, in percent.</summary>
    FirstToLast,

    /// <summary>Least-squares slope, in seconds per set.</summary>
    Slope,
}

/// <summary>Units and values of a <see cref="SessionMeasure"/>.</summary>
public static class SessionMeasures
{
    /// <summary>The unit a measure is in.</summary>
    public static Unit UnitOf(this SessionMeasure measure) => measure switch
    {
        SessionMeasure.Decrement or SessionMeasure.FirstToLast => Unit.Percent,
        SessionMeasure.Slope => Unit.SecondsPerSet,
        _ => Unit.Seconds,
    };

    /// <summary>The measure in words, as it stands in a sentence.</summary>
    public static string Words(this SessionMeasure measure) => measure switch
    {
        SessionMeasure.Total => "session total",
        SessionMeasure.MeanSet => "mean set",
        SessionMeasure.BestSet => "best set",
        SessionMeasure.FirstSet => "first set",
        SessionMeasure.LastSet => "last set",
        SessionMeasure.Decrement => "percentage decrement",
        SessionMeasure.FirstToLast => "first-to-last change",
        SessionMeasure.Slope => "slope per set",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a session measure."),
    };

    /// <summary>The measure of a complete session.</summary>
    internal static double Of(Session session, SessionMeasure measure)
    {
        double[] times = [.. session.TimesSeconds];
        var all = SetMeasures.Of(times);
        return measure switch
        {
            SessionMeasure.Total => session.Total.GetOrThrow().Value,
            SessionMeasure.MeanSet => all.Mean,
            SessionMeasure.BestSet => all.Best,
            SessionMeasure.FirstSet => times[0],
            SessionMeasure.LastSet => times[^1],
            SessionMeasure.Decrement => all.Decrement,
            SessionMeasure.FirstToLast => 100 * (all.LastToFirst - 1),
            SessionMeasure.Slope => all.Slope,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a session measure."),
        };
    }
}
