using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Standing;

public sealed class SmallGroupsTests
{
    [Fact]
    public void Groups_of_fewer_than_five_are_withheld()
    {
        var cells = SmallGroups.Suppress([Cell("juniors", 4), Cell("seniors", 5)], wholeIsShared: false);
        Assert.Equal(Refusal.Suppressed, cells[0].Figure.Refusal!.Reason);
        Assert.True(cells[1].Figure.IsEstimated);
    }

    [Fact]
    public void A_second_group_is_withheld_where_the_first_could_be_found_by_subtraction()
    {
        var cells = SmallGroups.Suppress([Cell("a", 3), Cell("b", 9), Cell("c", 6), Cell("d", 12)], wholeIsShared: true);
        Assert.Equal(["a", "c"], cells.Where(cell => !cell.Figure.IsEstimated).Select(cell => cell.Name));
        // Two small groups that together reach the threshold hide one another.
        Assert.Equal(2, SmallGroups.Suppress([Cell("a", 3), Cell("b", 3), Cell("c", 9)], wholeIsShared: true).Count(cell => !cell.Figure.IsEstimated));
    }

    [Fact]
    public void Two_releases_that_differ_by_a_few_athletes_reveal_them()
    {
        Assert.False(SmallGroups.SuppressAcrossReleases(Cell("squad", 20), Cell("squad", 21), 20).Figure.IsEstimated);
        Assert.True(SmallGroups.SuppressAcrossReleases(Cell("squad", 20), Cell("squad", 20), 20).Figure.IsEstimated);
        Assert.True(SmallGroups.SuppressAcrossReleases(Cell("squad", 20), Cell("squad", 26), 20).Figure.IsEstimated);
        Assert.Throws<ArgumentOutOfRangeException>(() => SmallGroups.SuppressAcrossReleases(Cell("squad", 5), Cell("squad", 6), 7));
    }

    private static GroupCell Cell(string name, int athletes) => new(name, athletes, new Estimate(320, Unit.Seconds, athletes, "mean"));
}
