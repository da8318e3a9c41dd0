using SquadAnalytics.Reporting.Published;

namespace SquadAnalytics.Reporting.Tests;

public sealed class PublishedTests
{
    [Theory]
    [InlineData("mean difference", -2.1499, true)]
    [InlineData("mean difference", -2.1501, false)]
    [InlineData("mean difference", 2.1, false)]
    [InlineData("SD of differences", 38.75, true)]
    [InlineData("SD of differences", 38.7, false)]
    public void Half_a_unit_of_the_last_digit_decides(string quantity, double here, bool agrees)
    {
        // By hand: -2.1 stands for -2.15 to -2.05, 38.8 for 38.75 to 38.85.
        var check = PublishedData.Read("peak-flow-meters").Check(quantity, here);
        Assert.Equal(agrees, check.Agrees);
        Assert.Equal(agrees ? "All 1 numbers of 1 published data sets agree with what was printed." : "0 of 1 numbers of 1 published data sets agree with what was printed, 1 do not.", PublishedFindings.Of([check]).Items[0].Sentence);
        Assert.Contains(agrees ? "agree" : "differ", Tables.AgainstPublished("Test", check).ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_data_set_has_rows_of_equal_length_and_a_source()
    {
        Assert.InRange(PublishedData.Names.Count, 20, 100);
        Assert.All(PublishedData.Names, name =>
        {
            var data = PublishedData.Read(name);
            Assert.NotEmpty(data.Printed);
            Assert.All(data.Printed, number => Assert.NotEmpty(number.Source));
            Assert.Single(data.Columns.Select(column => data.Words(column).Count).Distinct());
        });
    }

    [Fact]
    public void What_is_not_there_is_said()
    {
        Assert.Throws<ArgumentException>(() => PublishedData.Read("nowhere"));
        var data = PublishedData.Read("weir");
        Assert.Contains("has no column 'trail', but: subject, trial, value", Assert.Throws<ArgumentException>(() => data.Words("trail")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => data.Check("mean", 1));
        Assert.Throws<ArgumentException>(() => PublishedData.Read("permeability").Numbers("group"));
        Assert.Throws<ArgumentException>(() => PublishedFindings.Of());
    }
}
