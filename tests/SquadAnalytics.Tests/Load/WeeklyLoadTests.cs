using CsCheck;
using SquadAnalytics.Load;

namespace SquadAnalytics.Tests.Load;

public sealed class WeeklyLoadTests
{
    private static readonly DateOnly Monday = new(2031, 1, 6);
    private static readonly double[] Loads = [420, 0, 540, 360, 0, 600, 0];

    [Fact]
    public void Sum_monotony_and_strain_of_a_week_match_R()
    {
        // R 4.2.2: l <- c(420, 0, 540, 360, 0, 600, 0); sum(l); mean(l) / sd(l); sum(l) * mean(l) / sd(l).
        var week = WeeklyLoad.Summarize(Days(Loads), Monday).GetOrThrow();
        Assert.Equal(1920, week.Sum.Value);
        Assert.Equal(Unit.Load, week.Sum.Unit);
        Assert.Equal(1.023422, week.Monotony.GetOrThrow().Value, 5e-7);
        Assert.Equal(1964.969, week.Strain.GetOrThrow().Value, 5e-4);
        Assert.Contains("divided by 6", week.Monotony.GetOrThrow().Method, StringComparison.Ordinal);
        Assert.Equal(Loads, week.DailyLoads);
        Assert.Contains(week.Notes, note => note.Contains("explodes as days equalise", StringComparison.Ordinal));
    }

    [Fact]
    public void The_other_standard_deviation_can_be_asked_for()
    {
        // R 4.2.2: mean(l) / (sd(l) * sqrt(6 / 7)).
        var monotony = WeeklyLoad.Summarize(Days(Loads), Monday, LoadDeviation.Population).GetOrThrow().Monotony.GetOrThrow();
        Assert.Equal(1.105422, monotony.Value, 5e-7);
        Assert.Contains("divided by 7", monotony.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Seven_days_alike_have_no_monotony()
    {
        var week = WeeklyLoad.Summarize(Days([300, 300, 300, 300, 300, 300, 300]), Monday).GetOrThrow();
        Assert.Equal(2100, week.Sum.Value);
        Assert.Equal("Not enough data for the week's monotony: needs days that differ in load, has seven days alike.", week.Monotony.ToString());
        Assert.Equal(Refusal.ZeroVariance, week.Strain.Refusal!.Reason);
    }

    [Fact]
    public void A_day_that_is_not_confirmed_leaves_the_week_unknown()
    {
        DayContext[] days = [.. Days(Loads).Take(6), new DayContext("a", Monday.AddDays(6)) { Minutes = 60 }];
        Assert.Equal("Not enough data for the week's load: needs 7 confirmed days, has 6 confirmed days.", WeeklyLoad.Summarize(days, Monday).ToString());
        Assert.Equal(Refusal.TooFewDays, WeeklyLoad.Summarize([], Monday).Refusal!.Reason);
    }

    [Fact]
    public void Weeks_run_from_Monday_and_gaps_stay_in_place()
    {
        DayContext[] days = [.. Days(Loads), new DayContext("a", Monday.AddDays(16)) { IsRestDay = true }];
        var weeks = WeeklyLoad.Weeks(days);
        Assert.Equal([Monday, Monday.AddDays(7), Monday.AddDays(14)], weeks.Select(week => week.From));
        Assert.Equal([true, false, false], weeks.Select(week => week.Load.IsEstimated));
        Assert.Empty(WeeklyLoad.Weeks([]));
    }

    [Fact]
    public void Days_of_several_athletes_or_twice_the_same_are_a_caller_mistake()
    {
        Assert.Throws<ArgumentException>(() => WeeklyLoad.Summarize([.. Days(Loads), new DayContext("b", Monday)], Monday));
        Assert.Throws<ArgumentException>(() => WeeklyLoad.Summarize([.. Days(Loads), new DayContext("a", Monday)], Monday));
    }

    [Fact]
    public void A_factor_moves_sum_and_strain_but_not_monotony_and_the_order_of_days_does_not_matter() =>
        Gen.Select(Gen.Double[0.1, 5], Gen.Shuffle(Loads)).Sample((factor, shuffled) =>
        {
            var plain = WeeklyLoad.Summarize(Days(Loads), Monday).GetOrThrow();
            var other = WeeklyLoad.Summarize(Days([.. shuffled.Select(load => factor * load)]), Monday).GetOrThrow();
            ReferenceData.AssertClose(factor * plain.Sum.Value, other.Sum.Value, 1e-12);
            ReferenceData.AssertClose(plain.Monotony.GetOrThrow().Value, other.Monotony.GetOrThrow().Value, 1e-12);
        }, iter: 50);

    private static DayContext[] Days(IReadOnlyList<double> loads) =>
        [.. loads.Select((load, day) => load == 0 ? new DayContext("a", Monday.AddDays(day)) { IsRestDay = true } : new DayContext("a", Monday.AddDays(day)) { SessionRpe = 6, Minutes = load / 6 })];
}
