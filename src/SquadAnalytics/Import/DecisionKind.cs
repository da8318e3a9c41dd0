namespace SquadAnalytics.Import;

/// <summary>What a person is asked.</summary>
public enum DecisionKind
{
    /// <summary>Whether the first column holds athletes and the following ones sets, where no line names the columns.</summary>
    Columns,

    /// <summary>Whether a comma is a decimal mark.</summary>
    DecimalMark,

    /// <summary>On which date the test was done.</summary>
    Date,

    /// <summary>In which order day, month and year are written.</summary>
    DateOrder,

    /// <summary>Who is meant by a name.</summary>
    Name,

    /// <summary>Which protocol was done.</summary>
    Protocol,

    /// <summary>What a time means that the spreadsheet stored as a fraction of a day.</summary>
    DayFraction,

    /// <summary>Whether set times that rise by about the start interval are the running clock.</summary>
    Clock,

    /// <summary>Whether station times that rise within each set are splits, cumulative, or the running clock.</summary>
    Stations,

    /// <summary>Which of two different records of the same test counts.</summary>
    Duplicate,
}
