namespace SquadAnalytics.Tests;

public sealed class VocabularyTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_time_is_never_a_number_that_is_not_finite(double seconds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Seconds(seconds));

    // By hand: both add up to 329.0 s; as doubles, one after the other, the second gives 329.00000000000006.
    [Fact]
    public void Equal_totals_tie_whatever_their_sets() =>
        Assert.Equal(WorkedData.One([62.4, 63.1, 64.0, 69.2, 70.3]).Total.GetOrThrow(), WorkedData.One([63.9, 62.5, 64.2, 68.6, 69.8]).Total.GetOrThrow());

    [Fact]
    public void A_difference_of_times_is_negative_when_the_later_one_is_faster() =>
        Assert.Equal(-2.5, (new Seconds(60) - new Seconds(62.5)).Value);

    // The series of exp: 100 (b + b²/2). exp(b) - 1 as it stands has seven digits left here.
    [Fact]
    public void A_tiny_difference_of_logs_keeps_its_digits_in_percent() => Assert.Equal(1.0000000000500000e-8, Percent.FromLog(1e-10).Value, 1e-22);

    [Fact]
    public void The_default_confidence_level_is_ninety_percent()
    {
        Assert.Equal(ConfidenceLevel.Ninety, default);
        Assert.Equal("90 %", default(ConfidenceLevel).ToString());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(90)]
    [InlineData(double.NaN)]
    public void A_confidence_level_lies_strictly_between_0_and_1(double fraction) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ConfidenceLevel(fraction));

    [Fact]
    public void A_refusal_says_what_was_needed_and_what_was_found()
    {
        Answer<Estimate> answer = new NotEstimable("the late contrast", Refusal.TooFewSessions, 4, 3, "sessions");
        Assert.Equal("Not enough data for the late contrast: needs 4 sessions, has 3 sessions.", answer.ToString());
        Assert.Equal(Refusal.TooFewSessions, Assert.Throws<NotEstimableException>(() => answer.GetOrThrow()).Refusal.Reason);
    }
}
