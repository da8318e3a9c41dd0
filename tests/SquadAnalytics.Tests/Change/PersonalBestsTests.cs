using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Change;

public sealed class PersonalBestsTests
{
    private static readonly TypicalErrorResult Noise = TypicalError.Entered(new Seconds(2.5), 21, "invented");

    [Fact]
    public void Bests_are_the_running_minimum()
    {
        // Hand arithmetic: running minima of 331.2 330.4 327.1 328.0 327.3 323.6 324.5 322.9 319.8 321.2.
        var bests = PersonalBests.Find(SeasonData.Season, Noise).GetOrThrow();
        Assert.Equal([1, 2, 3, 6, 8, 9], bests.Bests.Select(best => best.Test));
        Assert.Equal(319.8, bests.Current.TotalSeconds, 1e-9);
        Assert.Equal([false, true, false, false, true, false], bests.Bests.Select(best => best.IsWithinTestNoise));
        Assert.Null(bests.Bests[0].ChangeSeconds);
        Assert.Equal(-3.5, bests.Bests[3].ChangeSeconds!.Value, 1e-9);
        Assert.Equal(1.0 / 9, bests.Current.ChanceWithoutChange, 1e-12);
    }

    [Theory]
    [InlineData(2, -0.564)]
    [InlineData(5, -1.163)]
    [InlineData(10, -1.539)]
    [InlineData(15, -1.736)]
    [InlineData(20, -1.867)]
    public void The_best_of_many_tests_drifts_without_any_change(int tests, double expected) =>
        // Expected smallest of m standard normal numbers; R 4.2.2: integrate(function(x) x * m * dnorm(x) * pnorm(x, lower = FALSE)^(m - 1), -Inf, Inf).
        Assert.Equal(expected, PersonalBests.ExpectedDrift(tests), 5.5e-4);

    [Fact]
    public void The_drift_for_two_tests_is_known_exactly() =>
        // Hand arithmetic: E min of two standard normals = -1/√π.
        Assert.Equal(-1 / Math.Sqrt(Math.PI), PersonalBests.ExpectedDrift(2), 1e-12);

    [Fact]
    public void A_tie_is_not_a_new_best() =>
        Assert.Single(PersonalBests.Find([WorkedData.One([64.1, 64.2, 64.3, 64.4, 64.5]), WorkedData.One([64.5, 64.4, 64.3, 64.2, 64.1], 1)], Noise).GetOrThrow().Bests);

    [Fact]
    public void Thin_or_mixed_data_are_refused()
    {
        Assert.Equal(Refusal.TooFewSessions, PersonalBests.Find([], Noise).Refusal!.Reason);
        Assert.Equal(Refusal.MixedProtocols, PersonalBests.Find([WorkedData.Total(320), WorkedData.One([60, 61, 62], 1, "B1")], Noise).Refusal!.Reason);
        Assert.Throws<ArgumentOutOfRangeException>(() => PersonalBests.ExpectedDrift(0));
    }

    [Fact]
    public void The_bests_of_a_squad_are_those_of_its_athletes()
    {
        var all = PersonalBests.OfSquad(WorkedData.EightAthletes, Noise).GetOrThrow();
        // By hand: the smallest of each athlete's four totals.
        Assert.Equal([322.9, 294.8, 345.3, 306.4, 337.2, 281.7, 355.0, 315.9], all.Select(own => Math.Round(own.Current.TotalSeconds, 6)));
        Assert.Equal(["B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8"], all.Select(own => own.AthleteId));
    }
}
