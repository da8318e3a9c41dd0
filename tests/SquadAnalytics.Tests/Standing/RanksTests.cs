using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Standing;

public sealed class RanksTests
{
    private static readonly IReadOnlyList<AthleteLevel> Three = [Level("first", 312), Level("second", 315), Level("third", 321)];

    [Fact]
    public void Expected_ranks_match_R()
    {
        // R 4.2.2: 1 + sum(pnorm((m[i] - m[-i]) / sqrt(2 * 2.55^2))).
        var ranks = Ranks.Fit(Three).GetOrThrow();
        Assert.Equal(1.209021, ranks[0].ExpectedRank.Value, 5e-7);
        Assert.Equal(1.845343, ranks[1].ExpectedRank.Value, 5e-7);
        Assert.Equal(2.945636, ranks[2].ExpectedRank.Value, 5e-7);
        Assert.Equal(0.797265, Ranks.FasterThan(Three[0].Estimate, Three[1].Estimate).Value, 5e-7);
    }

    [Fact]
    public void Rank_intervals_are_printed_instead_of_bare_positions()
    {
        // R 4.2.2: exact P(second ranks 3) = 0.0473 and P(third ranks 2) = 0.0519, so 10 % tails leave no doubt with 20 000 draws: at 80 % ranks 1-2, 1-2 and 3.
        var ranks = Ranks.Fit(Three, new RankOptions { Level = new ConfidenceLevel(0.8) }).GetOrThrow();
        Assert.Equal(["first: ranks 1 to 2", "second: ranks 1 to 2", "third: rank 3"], ranks.Select(athlete => athlete.ToString()));
        var ninety = Ranks.Fit(Three).GetOrThrow();
        Assert.Equal(1, ninety[0].From);
        Assert.Equal(2, ninety[0].To);
        Assert.Equal(3, ninety[2].To);
    }

    [Fact]
    public void An_interval_says_how_probable_its_ranks_are()
    {
        // R 4.2.2: integrate(dnorm(x, m[i], 2.55) * products of pnorm and 1 - pnorm of the others): P(first ranks 1 or 2) = 0.995321, P(second ranks 1 or 2) = 0.952738, P(third ranks 3) = 0.948060; 20,000 draws err by up to 0.0016.
        var ranks = Ranks.Fit(Three, new RankOptions { Level = new ConfidenceLevel(0.8) }).GetOrThrow();
        double[] expected = [0.995321, 0.952738, 0.948060];
        Assert.All(ranks.Zip(expected), pair => Assert.Equal(pair.Second, pair.First.Confidence, 0.006));
    }

    [Fact]
    public void One_athlete_has_no_rank_and_a_level_needs_a_standard_error()
    {
        Assert.Equal(Refusal.TooFewAthletes, Ranks.Fit([Three[0]]).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => Ranks.Fit([Three[0], new AthleteLevel("bare", new Estimate(300, Unit.Seconds, 1, "hand-made"))]));
    }

    private static AthleteLevel Level(string athlete, double seconds) => new(athlete, new Estimate(seconds, Unit.Seconds, 3, "hand-made") { StandardError = 2.55 });
}
