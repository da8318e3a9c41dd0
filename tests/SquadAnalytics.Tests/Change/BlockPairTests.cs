using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Change;

public sealed class BlockPairTests
{
    private static readonly DateOnly Start = new(2031, 1, 6);
    private static readonly TypicalErrorResult Noise = TypicalError.Entered(new Seconds(2.5502713), 21, "entered");

    [Fact]
    public void Blocks_are_put_in_the_order_of_their_dates()
    {
        var (one, two) = (Block("one", 0, 2), Block("two", 2, 4));
        Assert.Equal((one, two, false), (BlockPair.Of(one, two).First, BlockPair.Of(one, two).Second, BlockPair.Of(one, two).WasSwapped));
        var swapped = BlockPair.Of(two, one);
        Assert.Equal((one, two, true, false), (swapped.First, swapped.Second, swapped.WasSwapped, swapped.AreTwoGroups));
        Assert.Equal(Refusal.NotComparable, swapped.ForTwoGroups<Seconds>((_, _) => new Seconds(1)).Refusal!.Reason);
        Assert.Equal(1, swapped.ForSameAthletes<Seconds>((_, _) => new Seconds(1)).GetOrThrow().Value);
    }

    [Fact]
    public void Blocks_that_share_days_and_members_are_refused_as_a_mistake()
    {
        var one = Block("one", 0, 3, "B1", "B2");
        Assert.Throws<ArgumentException>(() => BlockPair.Of(one, Block("two", 2, 4, "B2", "B3")));
        Assert.Throws<ArgumentException>(() => BlockPair.Of(one, Block("two", 2, 4)));
        Assert.Throws<ArgumentException>(() => BlockPair.Of(one, one));
        Assert.True(BlockPair.Of(one, Block("two", 2, 4, "B3", "B4")).AreTwoGroups);
    }

    [Fact]
    public void Groups_take_the_last_tests_before_the_block_and_the_last_in_it()
    {
        var pair = BlockPair.Of(Block("one", 2, 4, "B1", "B2", "B3", "B4"), Block("two", 2, 4, "B5", "B6", "B7", "absent"));
        var groups = BlockGroups.Of([.. WorkedData.EightAthletes, WorkedData.Total(300, week: 3, athlete: "absent")], pair, new BlockComparisonOptions { TestsPerBlock = 2, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        // By hand, B1: (329.0 + 325.2) / 2 = 327.1 before, (327.1 + 322.9) / 2 = 325.0 in the block.
        Assert.Equal(("B1", "one", 327.1, 325.0), (groups.Rows[0].AthleteId, groups.Rows[0].Group, Math.Round(groups.Rows[0].Before.Value, 6), Math.Round(groups.Rows[0].After.Value, 6)));
        Assert.Equal(["B1", "B2", "B3", "B4", "B5", "B6", "B7"], groups.Rows.Select(row => row.AthleteId));
        Assert.Equal(("absent", "too few eligible tests before the block"), (groups.LeftOut[0].AthleteId, groups.LeftOut[0].Reason));
    }

    [Fact]
    public void Each_athlete_is_held_against_the_noise_of_the_test()
    {
        var changes = BlockChanges.Fit(
            WorkedData.EightAthletes, Block("one", 0, 2), Block("two", 2, 4), Noise, SmallestWorthwhileChange.Entered(new Seconds(5)),
            new SquadChangesOptions { Change = new AthleteChangeOptions { Selection = SelectionOptions.KeepAll } }).GetOrThrow();
        // By hand, B7: (361.4 + 355.0 - 367.9 - 358.8) / 2 = -5.15 s; SE 2.5502713 * sqrt(1/2 + 1/2). R 4.2.2: -5.15 + c(-1, 1) * qt(.95, 21) * 2.5502713 = -9.53837, -0.76163.
        var seventh = changes.Rows[6].Change.GetOrThrow();
        Assert.Equal(-5.15, seventh.Change.Value, 1e-9);
        Assert.Equal(-9.53837, seventh.Change.Lower!.Value, 1e-4);
        Assert.Equal(-0.76163, seventh.Change.Upper!.Value, 1e-4);
        Assert.Equal(ChangeVerdict.FasterSizeUnclear, seventh.Verdict);
    }

    private static TrainingBlock Block(string id, int fromWeek, int toWeek, params string[] members) =>
        new(id, id, Start.AddDays(7 * fromWeek), Start.AddDays((7 * toWeek) - 1)) { Members = members };
}
