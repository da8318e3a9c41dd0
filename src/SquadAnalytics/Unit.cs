namespace SquadAnalytics;

/// <summary>The unit in which an <see cref="Estimate"/> is expressed. A closed list, not a system of units.</summary>
public enum Unit
{
    /// <summary>A plain number: an intraclass correlation, a ratio, a standardised difference.</summary>
    None,

    /// <summary>Seconds.</summary>
    Seconds,

    /// <summary>Percent: 2.5 means 2.5 %.</summary>
    Percent,

    /// <summary>Seconds per set.</summary>
    SecondsPerSet,

    /// <summary>Percent per set.</summary>
    PercentPerSet,

    /// <summary>Seconds per week.</summary>
    SecondsPerWeek,

    /// <summary>Percent per week.</summary>
    PercentPerWeek,

    /// <summary>Natural-log seconds: an estimate on the log scale that has not been turned into percent.</summary>
    LogSeconds,

    /// <summary>Number of sessions.</summary>
    Sessions,

    /// <summary>Arbitrary units of training load (rating of perceived exertion times minutes).</summary>
    Load,

    /// <summary>Seconds per unit of training load.</summary>
    SecondsPerLoad,

    /// <summary>A probability between 0 and 1.</summary>
    Probability,

    /// <summary>Seconds per round of sparring.</summary>
    SecondsPerRound,

    /// <summary>Seconds per hour of sleep.</summary>
    SecondsPerHour,

    /// <summary>Seconds per kilogram of body mass.</summary>
    SecondsPerKilogram,

    /// <summary>Seconds per degree Celsius.</summary>
    SecondsPerDegree,
}

/// <summary>How a <see cref="Unit"/> is written.</summary>
public static class UnitText
{
    /// <summary>The symbol printed after a number, for example <c>s/set</c>; empty for a plain number.</summary>
    public static string Symbol(this Unit unit) => unit switch
    {
        Unit.None or Unit.Probability => "",
        Unit.Seconds => "s",
        Unit.Percent => "%",
        Unit.SecondsPerSet => "s/set",
        Unit.PercentPerSet => "%/set",
        Unit.SecondsPerWeek => "s/week",
        Unit.PercentPerWeek => "%/week",
        Unit.LogSeconds => "ln s",
        Unit.Sessions => "sessions",
        Unit.Load => "AU",
        Unit.SecondsPerLoad => "s/AU",
        Unit.SecondsPerRound => "s/round",
        Unit.SecondsPerHour => "s/h",
        Unit.SecondsPerKilogram => "s/kg",
        Unit.SecondsPerDegree => "s/°C",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "Not a unit of this library."),
    };
}
