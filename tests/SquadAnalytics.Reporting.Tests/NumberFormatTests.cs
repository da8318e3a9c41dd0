namespace SquadAnalytics.Reporting.Tests;

/// <summary>Expected texts written by hand from the rule: decimals = 1 - floor(log10 half-width), from 0 to entry decimals + 1 (common practice, no source).</summary>
public class NumberFormatTests
{
    [Theory]
    [InlineData(6.2, 1, 1)] // floor(log10 6.2) = 0
    [InlineData(0.372, 1, 2)] // floor = -1
    [InlineData(0.05, 1, 2)] // floor = -2 would be 3, but entries have 1 decimal: at most 2
    [InlineData(14.3, 1, 0)] // floor = 1
    [InlineData(250, 1, 0)] // floor = 2 would be -1
    [InlineData(0.05, 2, 3)]
    [InlineData(0.4, 0, 1)]
    [InlineData(1, 1, 1)]
    [InlineData(10, 1, 0)]
    [InlineData(0, 1, 2)]
    public void Decimals_follow_the_half_width_and_never_pass_the_entries_by_more_than_one(double halfWidth, int entryDecimals, int expected) =>
        Assert.Equal(expected, new NumberFormat(entryDecimals).Decimals(halfWidth));

    [Fact]
    public void An_estimate_is_written_with_its_unit_and_its_level()
    {
        var format = new NumberFormat(1);
        var late = Given.Seconds(5.9751, 5.602963, 6.347037);
        Assert.Equal("5.98 s", format.Value(late));
        Assert.Equal("90 % interval 5.60 to 6.35 s", format.Interval(late));
        var slope = new Estimate(2.19, Unit.SecondsPerSet, 5, "least squares") { Interval = new Interval(1.14291, 3.23709, ConfidenceLevel.NinetyFive) };
        Assert.Equal("2.2 s/set (95 % interval 1.1 to 3.2 s/set)", format.WithInterval(slope));
    }

    [Fact]
    public void Percentages_have_one_decimal_and_two_where_they_are_known_to_half_a_percent()
    {
        var format = new NumberFormat(1);
        Assert.Equal("5.6 %", format.Value(new Estimate(5.57877, Unit.Percent, 5, "CV")));
        Assert.Equal("3.4 %/set", format.Value(new Estimate(3.362218, Unit.PercentPerSet, 5, "fit") { Interval = new Interval(1.766884, 4.982561, default) }));
        Assert.Equal("−0.29 %/week", format.Value(new Estimate(-0.289589, Unit.PercentPerWeek, 10, "fit") { Interval = new Interval(-0.347143, -0.232002, default) }));
    }

    [Theory]
    [InlineData(-12.9, -19.10608, -6.69392, "12.9 s faster", "6.7 to 19.1 s faster", "−12.9 s (faster)")]
    [InlineData(-3.2, -9.40608, 3.00608, "3.2 s faster", "9.4 s faster to 3.0 s slower", "−3.2 s (faster)")]
    [InlineData(4.2, 1.1, 7.3, "4.2 s slower", "1.1 to 7.3 s slower", "+4.2 s (slower)")]
    [InlineData(0.0, -6.0, 6.0, "0.0 s different", "6.0 s faster to 6.0 s slower", "0.0 s")]
    [InlineData(-0.04, -6.0, 6.0, "0.0 s different", "6.0 s faster to 6.0 s slower", "0.0 s")]
    public void A_change_says_its_direction_in_a_word(double change, double lower, double upper, string words, string limits, string inTable)
    {
        var format = new NumberFormat(1);
        var estimate = Given.Seconds(change, lower, upper);
        Assert.Equal(words, format.Change(estimate));
        Assert.Equal(limits, format.ChangeLimits(estimate));
        Assert.Equal(inTable, format.SignedChange(estimate));
    }

    [Theory]
    [InlineData(0.0156, "p = .016")]
    [InlineData(0.0017653, "p = .002")]
    [InlineData(0.000131, "p < .001")]
    [InlineData(0, "p < .001")]
    [InlineData(0.0009999, "p < .001")]
    [InlineData(0.31146, "p = .311")]
    [InlineData(0.9997, "p > .999")]
    public void A_p_value_has_three_decimals_and_is_never_zero(double p, string expected) => Assert.Equal(expected, NumberFormat.PValue(p));

    [Theory]
    [InlineData(-0.001, 2, "0.00")]
    [InlineData(-5.7, 1, "−5.7")]
    [InlineData(1234.6, 0, "1235")]
    public void A_minus_is_a_minus_and_never_stands_before_zero(double number, int decimals, string expected) =>
        Assert.Equal(expected, NumberFormat.Fixed(number, decimals));

    [Fact]
    public void Numbers_are_the_same_under_every_culture()
    {
        foreach (var culture in Given.Cultures)
        {
            using var _ = Given.Culture(culture);
            Assert.Equal("−12.9 s (faster)", new NumberFormat(1).SignedChange(Given.Seconds(-12.9, -19.1, -6.7)));
            Assert.Equal("62.4 s", new NumberFormat(1).Time(new Seconds(62.4)));
            Assert.Equal("p = .016", NumberFormat.PValue(0.0156));
        }
    }

    [Fact]
    public void The_finest_resolution_among_the_sessions_sets_the_decimals()
    {
        var protocol = new Protocol("p", "Circuit", [], 2, new Seconds(90));
        Session Timed(string id, double? step) => Session.FromTimes(id, "a", new DateOnly(2031, 3, 4), protocol, 61, 62) with { TimingResolution = step is { } s ? new Seconds(s) : null };
        Assert.Equal(0, NumberFormat.For([Timed("1", 1)]).EntryDecimals);
        Assert.Equal(1, NumberFormat.For([Timed("1", 1), Timed("2", 0.1)]).EntryDecimals);
        Assert.Equal(2, NumberFormat.For([Timed("1", 0.01)]).EntryDecimals);
        Assert.Equal(1, NumberFormat.For([Timed("1", null)]).EntryDecimals);
    }

    [Fact]
    public void Impossible_arguments_are_named() =>
        Assert.Multiple(
            () => Assert.Throws<ArgumentOutOfRangeException>(() => new NumberFormat(3)),
            () => Assert.Throws<ArgumentOutOfRangeException>(() => NumberFormat.PValue(double.NaN)),
            () => Assert.Throws<ArgumentOutOfRangeException>(() => NumberFormat.PValue(1.1)));
}
