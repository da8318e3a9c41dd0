using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class WorkAndRestTests
{
    [Theory]
    [InlineData(50, 70)]
    [InlineData(70, 50)]
    public void A_faster_set_earns_more_rest(double work, double rest)
    {
        // Common practice, no source: on a 120-second start interval 50 s of work leaves 70 s of rest and 70 s leaves 50 s.
        var clock = WorkAndRest.Summarize(WorkedData.One([work, 60, 60, 60, 60])).GetOrThrow();
        Assert.Equal(rest, clock.Sets[0].Rest!.Value.Value, 1e-12);
    }

    [Fact]
    public void Sets_that_run_over_push_the_later_starts()
    {
        // Hand arithmetic with a start interval of 120 s.
        var clock = WorkAndRest.Summarize(WorkedData.One([110, 125, 130, 118, 112])).GetOrThrow();
        Assert.Equal([0, 120, 245, 375, 493], clock.Sets.Select(set => set.Start.Value));
        Assert.Equal([110, 245, 375, 493, 605], clock.Sets.Select(set => set.Finish.Value));
        Assert.Equal([10, 0, 0, 0, null], clock.Sets.Select(set => set.Rest?.Value));
        Assert.Equal([0, 0, 5, 15, 13], clock.Sets.Select(set => set.Late.Value));
        Assert.True(clock.HasNoRest);
    }

    [Fact]
    public void Rest_measures_of_a_session_match_hand_arithmetic()
    {
        // Hand arithmetic: 258.7 / 221.3 = 1.169001, 329 / 550.3 = 0.597856.
        var clock = WorkAndRest.Summarize(WorkedData.FirstSession).GetOrThrow();
        double?[] rest = [57.6, 56.9, 56.0, 50.8, null];
        double?[] lost = [0, 0.7, 2.3, 9.1, null];
        for (var k = 0; k < 4; k++)
        {
            Assert.Equal(rest[k]!.Value, clock.Sets[k].Rest!.Value.Value, 1e-9);
            Assert.Equal(lost[k]!.Value, clock.Sets[k].RestLost!.Value.Value, 1e-9);
        }

        Assert.Equal(1.169001, clock.WorkToRest.GetOrThrow().Value, 5e-7);
        Assert.Equal(0.597856, clock.Density.GetOrThrow().Value, 5e-7);
        Assert.False(clock.HasNoRest);
    }

    [Fact]
    public void A_missed_start_ends_the_test_where_the_rule_says_so()
    {
        var strict = new Protocol("strict", "Strict circuit", WorkedData.Circuit.Stations, 5, new Seconds(120)) { StartRule = StartRule.StopAtMissedStart };
        var session = WorkedData.One([110, 125, 100, 100, 100], protocol: strict);
        Assert.Equal(2, session.EndedAfterSet);
        Assert.Equal(Refusal.IncompleteSession, session.Total.Refusal!.Reason);
        var clock = WorkAndRest.Summarize(session).GetOrThrow();
        Assert.Equal(2, clock.Sets.Count);
        Assert.Equal(Refusal.IncompleteSession, clock.WorkToRest.Refusal!.Reason);
        // Exactly at the signal the start is not missed; the last set may take as long as it needs.
        Assert.True(WorkedData.One([120, 119, 100, 100, 140], protocol: strict).Total.IsEstimated);
    }

    [Fact]
    public void Without_a_start_interval_or_any_rest_there_is_no_ratio()
    {
        Assert.Equal(Refusal.IntervalUnknown, WorkAndRest.Summarize(WorkedData.One([60, 61, 62], protocol: WorkedData.WithSets(3, null))).Refusal!.Reason);
        Assert.Equal(Refusal.NoRest, WorkAndRest.Summarize(WorkedData.One([120, 121, 122, 123, 124])).GetOrThrow().WorkToRest.Refusal!.Reason);
    }

    [Fact]
    public void The_clock_runs_up_to_the_first_set_without_a_time()
    {
        var session = new Session("s", "a1", new DateOnly(2031, 1, 7), WorkedData.Circuit, [new SetTime(1, new Seconds(62)), new SetTime(2, SetStatus.CompletedUntimed), new SetTime(3, new Seconds(64))]);
        var clock = WorkAndRest.Summarize(session).GetOrThrow();
        Assert.Single(clock.Sets);
        Assert.Equal(Refusal.IncompleteSession, clock.Density.Refusal!.Reason);
    }

    [Fact]
    public void Work_and_rest_fill_the_interval_while_no_start_is_missed() =>
        Gen.Double[40, 120].Array[2, 12].Sample(times =>
        {
            var clock = WorkAndRest.Summarize(WorkedData.One(times)).GetOrThrow();
            Assert.All(clock.Sets.SkipLast(1), set => Assert.Equal(120, set.Work.Value + set.Rest!.Value.Value, 1e-9));
        });
}
