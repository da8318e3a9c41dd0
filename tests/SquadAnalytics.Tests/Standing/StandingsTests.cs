using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Standing;

public sealed class StandingsTests
{
    private static readonly TypicalErrorResult Noise = TypicalError.Entered(new Seconds(2.5502713), 21, "entered");

    private static Squad Eight(Func<Athlete, Athlete>? with = null) =>
        new("Mole Squad", [.. Enumerable.Range(1, 8).Select(k => new Athlete($"B{k}", $"Boxer {k}", $"B{k}")).Select(with ?? (athlete => athlete))], [WorkedData.Circuit], WorkedData.EightAthletes);

    [Fact]
    public void The_level_is_the_mean_of_the_last_tests_with_the_typical_error_of_that_mean()
    {
        var standings = Standings.Summarize(Eight(), Noise, new StandingsOptions { RecentTests = 3, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(["B6", "B2", "B4", "B8", "B1", "B5", "B3", "B7"], standings.Athletes.Select(athlete => athlete.AthleteId));
        // By hand: (283.1 + 286.0 + 281.7) / 3 = 283.6; R 4.2.2: 283.6 + c(-1, 1) * qt(.95, 21) * 2.5502713 / sqrt(3) = 281.0664, 286.1336.
        var fastest = standings.Athletes[0].Level;
        Assert.Equal(283.6, fastest.Value, 1e-9);
        Assert.Equal(281.0664, fastest.Lower!.Value, 1e-4);
        Assert.Equal(286.1336, fastest.Upper!.Value, 1e-4);
        Assert.Equal(281.7, standings.Athletes[0].Best.TotalSeconds, 1e-9);
        Assert.Empty(standings.WithoutRecentTest);
    }

    [Fact]
    public void Who_has_no_recent_test_or_left_has_no_place()
    {
        var on = WorkedData.EightAthletes[^1].Date;
        var squad = Eight(athlete => athlete.Id == "B2" ? athlete with { Left = on.AddDays(-1) } : athlete);
        var late = squad.Sessions.Append(WorkedData.Total(300, week: 30, athlete: "B1")).ToList();
        var standings = Standings.Summarize(squad, Noise, new StandingsOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(["B2"], standings.WithoutRecentTest);
        var later = Standings.Summarize(new Squad("Mole Squad", squad.Athletes, squad.Protocols, late), Noise, new StandingsOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(["B1"], later.Athletes.Select(athlete => athlete.AthleteId));
    }

    [Fact]
    public void Juniors_are_ranked_only_when_asked_for()
    {
        var squad = Eight(athlete => athlete.Id == "B6" ? athlete with { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] } : athlete);
        var standings = Standings.Summarize(squad, Noise, new StandingsOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.DoesNotContain(standings.Rank().GetOrThrow(), athlete => athlete.AthleteId == "B6");
        Assert.Equal("B6", standings.Rank(withJuniors: true).GetOrThrow()[0].AthleteId);
    }

    [Fact]
    public void A_group_of_four_is_withheld_and_with_it_the_one_from_which_it_could_be_found()
    {
        var standings = Standings.Summarize(Eight(), Noise, new StandingsOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var groups = standings.Groups(id => id is "B1" or "B2" or "B3" ? "few" : "many");
        Assert.All(groups, group => Assert.Equal(Refusal.Suppressed, group.Figure.Refusal!.Reason));
        Assert.True(standings.Groups(_ => "all")[0].Figure.IsEstimated);
    }
}
