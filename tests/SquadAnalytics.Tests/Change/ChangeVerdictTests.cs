using CsCheck;
using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

public sealed class ChangeVerdictTests
{
    private static readonly SmallestWorthwhileChange Five = SmallestWorthwhileChange.Entered(new Seconds(5));

    [Theory]
    [InlineData(-12, -6, ChangeVerdict.FasterWorthwhile, "faster by a worthwhile amount")]
    [InlineData(5.1, 9, ChangeVerdict.SlowerWorthwhile, "slower by a worthwhile amount")]
    [InlineData(-4.9, 4.9, ChangeVerdict.NoWorthwhileChange, "no worthwhile change")]
    [InlineData(-3, -1, ChangeVerdict.NoWorthwhileChange, "no worthwhile change")]
    [InlineData(-9, -1, ChangeVerdict.FasterSizeUnclear, "faster, size unclear")]
    [InlineData(1, 9, ChangeVerdict.SlowerSizeUnclear, "slower, size unclear")]
    [InlineData(-9, 3, ChangeVerdict.NotClear, "not clear from these tests")]
    public void A_verdict_is_read_off_the_interval(double lower, double upper, ChangeVerdict verdict, string words)
    {
        // Hand arithmetic against ±5 s.
        Assert.Equal(verdict, ChangeVerdicts.Of(Change(lower, upper), Five));
        Assert.Equal(words, verdict.Words());
    }

    [Fact]
    public void Percentages_are_compared_on_the_scale_of_logarithms()
    {
        // Hand arithmetic: against 5 %, faster begins at 100 (1 / 1.05 - 1) = -4.762 %.
        var five = SmallestWorthwhileChange.Entered(new Percent(5));
        Estimate Of(double upper) => new(-6, Unit.Percent, 2, "hand-made") { Interval = new Interval(-7, upper, ConfidenceLevel.Ninety) };
        Assert.Equal(ChangeVerdict.FasterWorthwhile, ChangeVerdicts.Of(Of(-4.77), five));
        Assert.Equal(ChangeVerdict.FasterSizeUnclear, ChangeVerdicts.Of(Of(-4.75), five));
    }

    [Fact]
    public void Turning_every_sign_turns_the_verdict() =>
        Gen.Select(Gen.Double[-20, 20], Gen.Double[0.1, 15]).Sample((centre, reach) =>
        {
            var verdict = ChangeVerdicts.Of(Change(centre - reach, centre + reach), Five);
            var turned = ChangeVerdicts.Of(Change(-centre - reach, -centre + reach), Five);
            Assert.Equal(verdict switch
            {
                ChangeVerdict.FasterWorthwhile => ChangeVerdict.SlowerWorthwhile,
                ChangeVerdict.SlowerWorthwhile => ChangeVerdict.FasterWorthwhile,
                ChangeVerdict.FasterSizeUnclear => ChangeVerdict.SlowerSizeUnclear,
                ChangeVerdict.SlowerSizeUnclear => ChangeVerdict.FasterSizeUnclear,
                var same => same,
            }, turned);
        });

    [Fact]
    public void A_change_without_an_interval_or_in_another_unit_has_no_verdict()
    {
        Assert.Throws<ArgumentException>(() => ChangeVerdicts.Of(new Estimate(1, Unit.Seconds, 2, "hand-made"), Five));
        Assert.Throws<ArgumentException>(() => ChangeVerdicts.Of(Change(0, 1), SmallestWorthwhileChange.Entered(new Percent(5))));
    }

    private static Estimate Change(double lower, double upper) => new((lower + upper) / 2, Unit.Seconds, 2, "hand-made") { Interval = new Interval(lower, upper, ConfidenceLevel.Ninety) };
}
