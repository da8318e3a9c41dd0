namespace SquadAnalytics.Change;

/// <summary>One date of a season.</summary>
/// <param name="Date">The date.</param>
/// <param name="Week">Weeks since the first eligible test, by true dates.</param>
/// <param name="TotalSeconds">Session total; the mean where a date has several tests.</param>
/// <param name="LineSeconds">The line at that date.</param>
public sealed record SeasonPoint(DateOnly Date, double Week, double TotalSeconds, double LineSeconds)
{
    /// <summary>Total minus line.</summary>
    public double ResidualSeconds => TotalSeconds - LineSeconds;
}
