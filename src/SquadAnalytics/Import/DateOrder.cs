namespace SquadAnalytics.Import;

/// <summary>In which order a date of three numbers is written.</summary>
public enum DateOrder
{
    /// <summary>Day, month, year: <c>04/03/2031</c> is 4 March.</summary>
    DayMonthYear,

    /// <summary>Month, day, year: <c>04/03/2031</c> is 3 April.</summary>
    MonthDayYear,

    /// <summary>Year, month, day: <c>31-03-04</c> is 4 March 2031.</summary>
    YearMonthDay,
}
