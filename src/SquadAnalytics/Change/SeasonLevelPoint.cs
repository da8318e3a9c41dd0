namespace SquadAnalytics.Change;

/// <summary>One week of a season: the test, where there was one, and the level behind it.</summary>
/// <param name="Monday">The week's Monday.</param>
/// <param name="TotalSeconds">Session total; the mean where the week has several tests; null in a week without a test.</param>
/// <param name="Level">The level from the tests up to this week, with its interval: what could be known then.</param>
/// <param name="InHindsight">The level from all tests of the season, with its interval.</param>
public sealed record SeasonLevelPoint(DateOnly Monday, double? TotalSeconds, Estimate Level, Estimate InHindsight)
{
    /// <summary>Monday and level.</summary>
    public override string ToString() => FormattableString.Invariant($"{Monday:yyyy-MM-dd}: {InHindsight}");
}
