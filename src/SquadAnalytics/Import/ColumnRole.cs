namespace SquadAnalytics.Import;

/// <summary>What a column holds.</summary>
internal enum ColumnRole
{
    Ignored,
    Athlete,
    Date,
    Protocol,
    Occasion,
    Place,
    Timer,
    Temperature,
    Total,

    /// <summary>Long files: the number of the set.</summary>
    SetNumber,

    /// <summary>Long files: the station.</summary>
    StationName,

    /// <summary>Long files: the time.</summary>
    Time,

    /// <summary>Wide files: the time of one set.</summary>
    SetTime,

    /// <summary>Wide files: the time of one station in one set.</summary>
    StationTime,
}
