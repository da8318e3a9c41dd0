using System.Text.Json;
using SquadAnalytics.Load;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Load;

/// <summary>A made series of daily loads, in R 4.2.2; calls and tolerances stand in tests/Reference/monitoring/generated_load. Ratios of short to long loads are not offered, so they are left out.</summary>
public sealed class GeneratedLoadTests
{
    private static readonly DateOnly First = new(2031, 1, 6);
    private static readonly double[] Loads = ReferenceData.Column("monitoring", "generated_load.csv", "load");

    [Fact]
    public void Both_smooth_lines_match_R()
    {
        IReadOnlyList<double> acute = LoadLine.Smooth(Loads, 7), chronic = LoadLine.Smooth(Loads, 28);
        foreach (var (day, expected) in ReferenceData.Values("monitoring", "generated_load", "ewma").EnumerateArray().Index())
        {
            Assert.Equal(day + 1, expected.GetProperty("day").GetInt32());
            ReferenceData.AssertClose(expected.GetProperty("acute").GetDouble(), acute[day], 1e-10);
            ReferenceData.AssertClose(expected.GetProperty("chronic").GetDouble(), chronic[day], 1e-10);
        }
    }

    [Fact]
    public void Weeks_match_R()
    {
        DayContext[] days = [.. Loads.Select((load, day) => new DayContext("a1", First.AddDays(day)) { SessionRpe = load > 0 ? 1 : 0, Minutes = load })];
        foreach (var expected in ReferenceData.Values("monitoring", "generated_load", "weekly").EnumerateArray())
        {
            var week = WeeklyLoad.Summarize(days, First.AddDays(7 * (expected.GetProperty("week").GetInt32() - 1))).GetOrThrow();
            ReferenceData.AssertClose(expected.GetProperty("total").GetDouble(), week.Sum.Value, 1e-10);
            ReferenceData.AssertClose(expected.GetProperty("mean").GetDouble(), Descriptive.Mean(week.DailyLoads), 1e-10);
            ReferenceData.AssertClose(expected.GetProperty("sd").GetDouble(), Descriptive.StandardDeviation(week.DailyLoads), 1e-10);
            if (expected.GetProperty("monotony").ValueKind == JsonValueKind.Null)
            {
                Assert.Equal(JsonValueKind.Null, expected.GetProperty("strain").ValueKind);
                Assert.Equal((Refusal.ZeroVariance, Refusal.ZeroVariance), (week.Monotony.Refusal!.Reason, week.Strain.Refusal!.Reason));
                continue;
            }

            ReferenceData.AssertClose(expected.GetProperty("monotony").GetDouble(), week.Monotony.GetOrThrow().Value, 1e-10);
            ReferenceData.AssertClose(expected.GetProperty("strain").GetDouble(), week.Strain.GetOrThrow().Value, 1e-10);
        }
    }

    [Fact]
    public void Trailing_means_match_R()
    {
        foreach (var (day, expected) in ReferenceData.Values("monitoring", "generated_load", "rolling").EnumerateArray().Index())
        {
            Assert.Equal(day + 1, expected.GetProperty("day").GetInt32());
            foreach (var (name, length) in new[] { ("mean7", 7), ("mean28", 28) })
            {
                if (expected.GetProperty(name).ValueKind == JsonValueKind.Null) Assert.True(day + 1 < length);
                else ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), Descriptive.Mean(Loads[(day + 1 - length)..(day + 1)]), 1e-10);
            }
        }
    }
}
