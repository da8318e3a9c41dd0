using CsCheck;
using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

/// <summary>Expected counts by hand from the invented logbook below: tests on Tuesdays, weeks 0 to 3 in the first block, 5 to 8 in the second.</summary>
public sealed class BlockCircumstancesTests
{
    private static readonly DateOnly Tuesday = new(2031, 1, 7);
    private static readonly TrainingBlock First = new("b1", "Base", Tuesday, Tuesday.AddDays(27));
    private static readonly TrainingBlock Second = new("b2", "Power", Tuesday.AddDays(35), Tuesday.AddDays(62));
    private static readonly BlockCircumstancesOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void Attendance_counts_the_weeks_in_which_the_squad_tested()
    {
        // First block: A 4 of 4, B 3 of 4 (one not started), C 4 of 4, D joined in week 2: 2 of 2, E came in the second block only: not due. Second: A to D 4 of 4 but B barred in week 7 (3 of 3), E 2 of 4.
        var facts = BlockCircumstances.Summarize(Squad(), First, Second, All).GetOrThrow();
        Assert.Equal(new BlockDue(14, 13), facts.FirstDue);
        Assert.Equal(new BlockDue(19, 17), facts.SecondDue);
        Assert.Equal(100.0 * 13 / 14, facts.FirstDue.Share!.Value.Value, 1e-12);
        Assert.Equal("13 of 14", facts.FirstDue.ToString());
        Assert.Equal(5, facts.WeeksBetween);
    }

    [Fact]
    public void Athletes_of_one_block_only_are_listed_with_their_tests_and_mean_total()
    {
        var lone = Assert.Single(BlockCircumstances.Summarize(Squad(), First, Second, All).GetOrThrow().InOneBlockOnly);
        Assert.Equal(("E", 0, 2, 341.0), (lone.AthleteId, lone.FirstTests, lone.SecondTests, Math.Round(lone.MeanSeconds, 9)));
    }

    [Fact]
    public void Conditions_that_changed_between_the_blocks_are_named()
    {
        var facts = BlockCircumstances.Summarize(Squad(), First, Second, All).GetOrThrow();
        BlockCondition Of(BlockConditionKind kind) => facts.Conditions.Single(condition => condition.Kind == kind);
        Assert.True(Of(BlockConditionKind.Timer).IsChanged);
        Assert.Equal("timer: watch (13) | watch (13), phone (4)", Of(BlockConditionKind.Timer).ToString());
        Assert.False(Of(BlockConditionKind.Place).IsKnown);
        Assert.False(Of(BlockConditionKind.Place).IsChanged);
        Assert.False(Of(BlockConditionKind.Circuit).IsChanged);
        Assert.Equal("120.00 s", Of(BlockConditionKind.StartInterval).First[0].Value);
    }

    [Fact]
    public void A_changed_start_interval_is_seen_although_its_tests_are_not_compared()
    {
        var squad = Squad();
        var shorter = WorkedData.WithSets(5, startInterval: 100);
        var other = WorkedData.One([60, 61, 62, 63, 64], 6, "A", shorter) with { Id = "A-short", Occasion = 2 };
        var more = new Squad("More (invented)", squad.Athletes, [WorkedData.Circuit, shorter], [.. squad.Sessions, other]);
        Assert.Equal(Refusal.MixedProtocols, BlockCircumstances.Summarize(more, First, Second, All).Refusal!.Reason);
        var facts = BlockCircumstances.Summarize(more, First, Second, All with { Selection = SelectionOptions.KeepAll with { Protocol = WorkedData.Circuit } }).GetOrThrow();
        Assert.True(facts.Conditions.Single(condition => condition.Kind == BlockConditionKind.StartInterval).IsChanged);
    }

    [Fact]
    public void Sparring_weigh_ins_and_bouts_are_counted_block_by_block()
    {
        // Sparring: A in week 1 (2 rounds); recorded as 0 for B in week 1, unknown for the 11 and 17 others. Weigh-in of C on Saturday of week 5, bout on Sunday: the test of week 5 is 4 days before the
        // weigh-in and 5 before the bout, that of week 6 two days after the bout.
        var facts = BlockCircumstances.Summarize(Squad(), First, Second, All).GetOrThrow();
        Assert.Equal(new BlockCount(1, 0), facts.AfterSparring);
        Assert.Equal(new BlockCount(11, 17), facts.SparringUnknown);
        Assert.Equal(new BlockCount(0, 1), facts.MakingWeight);
        Assert.Equal(new BlockCount(0, 1), facts.NearABout);
        Assert.Equal(1, facts.Juniors);
    }

    [Fact]
    public void Health_notes_are_counted_only_where_they_were_handed_over()
    {
        Assert.Null(BlockCircumstances.Summarize(Squad(), First, Second, All).GetOrThrow().AthletesWithHealthNotes);
        HealthNote[] notes = [new("n1", "A", Tuesday.AddDays(1), "cold"), new("n2", "A", Tuesday.AddDays(3), "cold"), new("n3", "D", Tuesday.AddDays(40), "wrist"), new("n4", "D", Tuesday.AddDays(30), "between the blocks")];
        // A in the first block (two notes, one athlete); D and, for a head knock, B in the second.
        Assert.Equal(new BlockCount(1, 2), BlockCircumstances.Summarize(Squad(), First, Second, All with { HealthNotes = notes }).GetOrThrow().AthletesWithHealthNotes);
    }

    [Fact]
    public void Comparisons_are_those_that_were_stated_beside_those_that_the_logbook_allows()
    {
        var facts = BlockCircumstances.Summarize(Squad() with { Blocks = [First, Second, new TrainingBlock("b3", "Sharp", Tuesday.AddDays(70), Tuesday.AddDays(90)) { DefinedAfterData = true }] }, First, Second, All with { ComparisonsTried = 2 }).GetOrThrow();
        Assert.Equal((2, 3, false), (facts.ComparisonsTried, facts.PairsOfBlocks, facts.DefinedAfterData));
        Assert.True(BlockCircumstances.Summarize(Squad(), First, Second with { DefinedAfterData = true }, All).GetOrThrow().DefinedAfterData);
        Assert.Throws<ArgumentOutOfRangeException>(() => new BlockCircumstancesOptions { ComparisonsTried = 0 });
        Assert.Throws<ArgumentException>(() => BlockCircumstances.Summarize(Squad(), Second, First));
    }

    [Fact]
    public void The_order_of_sessions_and_athletes_does_not_matter()
    {
        var plain = Squad();
        var expected = BlockCircumstances.Summarize(plain, First, Second, All).GetOrThrow();
        Gen.Shuffle(plain.Sessions.ToArray()).Sample(
            sessions =>
            {
                var facts = BlockCircumstances.Summarize(new Squad(plain.Name, [.. plain.Athletes.Reverse()], plain.Protocols, sessions) { Contexts = plain.Contexts, Events = plain.Events }, First, Second, All).GetOrThrow();
                Assert.Equal(expected.ToString(), facts.ToString());
                Assert.Equal(expected.InOneBlockOnly, facts.InOneBlockOnly);
            },
            iter: 30);
    }

    private static Squad Squad()
    {
        Athlete[] athletes =
        [
            new("A", "Ada", "A") { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] }, new("B", "Bo", "B"), new("C", "Cy", "C"),
            new("D", "Di", "D") { Joined = Tuesday.AddDays(14) }, new("E", "Eve", "E"), new("F", "Fay", "F"),
        ];
        Session Test(string athlete, int week) => WorkedData.Total(330 + week, week, athlete) with { Timer = week == 8 ? "phone" : "watch" };
        var notStarted = new Session("B-w3", "B", Tuesday.AddDays(21), WorkedData.Circuit, [new SetTime(1, SetStatus.NotStarted)]);
        Session[] sessions =
        [
            .. new[] { 0, 1, 2, 3, 5, 6, 7, 8 }.SelectMany(week => new[] { "A", "C" }.Select(athlete => Test(athlete, week))),
            .. new[] { 0, 1, 2, 5, 6, 8 }.Select(week => Test("B", week)), notStarted,
            .. new[] { 2, 3, 5, 6, 7, 8 }.Select(week => Test("D", week)),
            WorkedData.Total(340, 5, "E") with { Timer = "watch" }, WorkedData.Total(342, 7, "E") with { Timer = "watch" },
        ];
        return new Squad("Six (invented)", athletes, [WorkedData.Circuit], sessions)
        {
            Contexts = [new DayContext("A", Tuesday.AddDays(7)) { SparringRoundsBefore = 2 }, new DayContext("B", Tuesday.AddDays(7)) { SparringRoundsBefore = 0 }],
            Events =
            [
                new AthleteEvent("e1", "C", Tuesday.AddDays(39), EventKind.WeighIn), new AthleteEvent("e2", "C", Tuesday.AddDays(40), EventKind.Bout),
                new AthleteEvent("e3", "B", Tuesday.AddDays(45), EventKind.HeadKnock) { ClearedOn = Tuesday.AddDays(52) },
            ],
        };
    }
}
