using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class SquadProfileTests
{
    private static readonly DateOnly Day = new(2031, 3, 20);
    private static readonly Protocol Circuit = new("pier-v1", "Pier circuit", [], 2, new Seconds(100));

    [Fact]
    public void Each_set_has_the_median_over_the_athletes_of_the_day()
    {
        // By hand: 58, 60, 65 and 61, 62, 70; the void session and the other day do not count.
        var squad = Of(Times(1, 60, 62), Times(2, 58, 61), Times(3, 65, 70), Times(4, 10, 10) with { VoidReason = "watch" });
        var profile = SquadProfile.Summarize(squad, Circuit, Day).GetOrThrow();
        Assert.Equal([60.0, 62.0], profile.Medians.Select(median => median.Value));
        Assert.Equal(3, profile.Athletes);
    }

    [Fact]
    public void Two_athletes_are_no_squad() =>
        Assert.Equal("Not enough data for the squad's usual pacing: needs 3 athletes, has 2 athletes.", SquadProfile.Summarize(Of(Times(1, 60, 62), Times(2, 58, 61)), Circuit, Day).ToString());

    private static Session Times(int athlete, params double[] times) => Session.FromTimes($"s{athlete}", $"a{athlete}", Day, Circuit, times);

    private static Squad Of(params Session[] sessions) =>
        new("Pier", [.. sessions.Select(session => new Athlete(session.AthleteId, session.AthleteId, session.AthleteId))], [Circuit], sessions);
}
