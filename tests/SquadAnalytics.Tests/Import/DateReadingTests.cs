using SquadAnalytics.Import;

namespace SquadAnalytics.Tests.Import;

public sealed class DateReadingTests
{
    [Theory]
    [InlineData("2031-03-04")]
    [InlineData("2031/03/04")]
    [InlineData("2031.3.4")]
    [InlineData("20310304")]
    [InlineData("2031-03-04 18:30")]
    [InlineData("2031-03-04T18:30:00")]
    [InlineData("4 March 2031")]
    [InlineData("4th of March 2031")]
    [InlineData("4. März 2031")]
    [InlineData("4 mars 2031")]
    [InlineData("4 de marzo de 2031")]
    [InlineData("4-Mar-31")]
    [InlineData("Mar 4, 2031")]
    [InlineData("Tue 4 March 2031")]
    [InlineData("4 marca 2031")]
    [InlineData("4 марта 2031")]
    public void A_date_that_can_mean_one_day_only_is_certain(string text) => Assert.Equal(new DateOnly(2031, 3, 4), DateReading.Parse(text)?.Certain);

    [Theory]
    [InlineData("25/03/2031", 2031, 3, 25)]
    [InlineData("03/25/2031", 2031, 3, 25)]
    [InlineData("03.03.2031", 2031, 3, 3)]
    public void Numbers_that_leave_one_reading_are_certain(string text, int year, int month, int day) =>
        Assert.Equal(new DateOnly(year, month, day), DateReading.Parse(text)?.Certain);

    [Theory]
    [InlineData("04/03/2031")]
    [InlineData("4.3.2031")]
    [InlineData("04-03-31")]
    public void Numbers_with_more_than_one_reading_are_ambiguous(string text)
    {
        var reading = DateReading.Parse(text)!.Value;
        Assert.True(reading.IsAmbiguous);
        Assert.Null(reading.Certain);
        Assert.Equal(new DateOnly(2031, 3, 4), reading.In(DateOrder.DayMonthYear));
        Assert.Equal(new DateOnly(2031, 4, 3), reading.In(DateOrder.MonthDayYear));
    }

    [Theory]
    [InlineData("31/04/2031")]
    [InlineData("2031-02-29")]
    [InlineData("2031-13-01")]
    [InlineData("4 March")]
    [InlineData("4/3")]
    [InlineData("soon")]
    [InlineData("62.4")]
    [InlineData("1:02.4")]
    [InlineData("4 srp 2031")] // August in Czech, July in Croatian
    public void What_is_no_date_is_none(string text) => Assert.Null(DateReading.Parse(text));

    [Fact]
    public void A_date_is_found_within_a_title()
    {
        Assert.Equal(new DateOnly(2031, 3, 4), DateReading.Find("Week 12 - Quay circuit, Tuesday 4 March 2031", out var rest)?.Certain);
        Assert.Equal("Week 12 - Quay circuit, Tuesday", rest);
    }
}
