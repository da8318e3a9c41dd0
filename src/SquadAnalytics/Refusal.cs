namespace SquadAnalytics;

/// <summary>Why a measure cannot be estimated from the data at hand.</summary>
public enum Refusal
{
    /// <summary>The session has too few sets.</summary>
    TooFewSets,

    /// <summary>The sample has too few observations for the calculation.</summary>
    TooFewObservations,

    /// <summary>There are more observations than the calculation takes, whose time or memory grows faster than their number.</summary>
    TooManyObservations,

    /// <summary>The athlete has too few sessions.</summary>
    TooFewSessions,

    /// <summary>The squad has too few athletes.</summary>
    TooFewAthletes,

    /// <summary>Too few paired tests, or too few degrees of freedom in the typical error.</summary>
    TooFewPairs,

    /// <summary>Too few days are confirmed.</summary>
    TooFewDays,

    /// <summary>A segment of an interrupted series has too few tests.</summary>
    TooFewPerSegment,

    /// <summary>Not all sets of the session were completed.</summary>
    IncompleteSession,

    /// <summary>The start interval of the rolling clock is not known.</summary>
    IntervalUnknown,

    /// <summary>No rest was left between sets.</summary>
    NoRest,

    /// <summary>Station times are missing.</summary>
    StationsMissing,

    /// <summary>The protocol has no bands on the day.</summary>
    BandsMissing,

    /// <summary>The observations do not vary.</summary>
    ZeroVariance,

    /// <summary>A variance component was estimated below zero.</summary>
    NegativeVarianceComponent,

    /// <summary>The best-fitting value lies on the edge of what is possible.</summary>
    BoundarySolution,

    /// <summary>The data hardly constrain the value.</summary>
    WeaklyIdentified,

    /// <summary>The iteration did not settle.</summary>
    NotConverged,

    /// <summary>The denominator of a ratio may be zero.</summary>
    RatioUnstable,

    /// <summary>Sessions of different protocols were put together.</summary>
    MixedProtocols,

    /// <summary>The quantities are not comparable.</summary>
    NotComparable,

    /// <summary>Withheld because the group is too small to stay anonymous.</summary>
    Suppressed,
}
