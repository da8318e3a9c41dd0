using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Reliability;

public sealed class FamiliarisationTests
{
    private static readonly SmallestWorthwhileChange FiveSeconds = SmallestWorthwhileChange.Entered(new Seconds(5));

    [Fact]
    public void Later_tests_against_the_first_match_R()
    {
        // R 4.2.2: t.test(rowMeans(q[, 2:4]) - q[, 1], conf.level = .9).
        var result = Familiarisation.Fit(WorkedData.EightAthletes, FiveSeconds).GetOrThrow();
        Assert.Equal(1, result.Drop);
        Assert.True(result.Settled);
        var later = result.LaterMinusDropped.GetOrThrow();
        Assert.Equal(-3.629167, later.Value, 5e-7);
        Assert.Equal(-5.723751, later.Lower!.Value, 5e-7);
        Assert.Equal(-1.534582, later.Upper!.Value, 5e-7);
    }

    [Fact]
    public void Large_gains_in_the_first_tests_are_dropped()
    {
        // By construction: gains of 20, 10 and then about 0 s.
        var sessions = WorkedData.Weekly([330, 310, 300.2, 300.1, 300], [341, 320, 310, 310.4, 310.1], [351, 331, 320.5, 320, 320.2], [361, 340, 330.1, 330.3, 330]);
        var result = Familiarisation.Fit(sessions, FiveSeconds).GetOrThrow();
        Assert.Equal(2, result.Drop);
    }

    [Fact]
    public void A_steady_trend_counts_as_training_and_not_as_familiarisation()
    {
        // By construction: every test is 8 s faster than the one before, give or take; the later trend contains the first change.
        var sessions = WorkedData.Weekly([330, 322.1, 314, 306.2, 298], [341, 332.8, 325.1, 317, 309], [351, 343, 334.8, 327, 319.1], [361, 353.2, 345, 336.9, 329]);
        Assert.Equal(1, Familiarisation.Fit(sessions, FiveSeconds).GetOrThrow().Drop);
    }

    [Fact]
    public void Gains_that_never_settle_are_said()
    {
        var sessions = WorkedData.Weekly([400, 380, 350, 335, 329], [410, 390.2, 360.1, 345, 339.2], [420, 400.1, 370, 355.2, 349], [430, 410, 380.2, 365.1, 359]);
        var result = Familiarisation.Fit(sessions, SmallestWorthwhileChange.Entered(new Seconds(2))).GetOrThrow();
        Assert.Equal(3, result.Drop);
        Assert.False(result.Settled);
    }

    [Fact]
    public void Two_tests_cannot_tell()
    {
        Assert.Equal(Refusal.TooFewPairs, Familiarisation.Fit(WorkedData.Weekly([300, 301], [310, 312], [320, 321]), FiveSeconds).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => Familiarisation.Fit(WorkedData.EightAthletes, SmallestWorthwhileChange.Entered(new Percent(2))));
    }
}
