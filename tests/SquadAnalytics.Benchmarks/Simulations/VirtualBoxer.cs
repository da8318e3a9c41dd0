using SquadAnalytics.SampleSquad;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>A boxer with a known profile, whose sessions are drawn at will.</summary>
internal sealed record VirtualBoxer
{
    private static readonly DateOnly FirstDay = new(2030, 9, 5);

    /// <summary>The id in the sessions.</summary>
    public string Id { get; init; } = "a1";

    /// <summary>The test.</summary>
    public SampleProtocol Test { get; init; } = Scenarios.Quillmere.MainTest;

    /// <summary>SD of one set, in percent.</summary>
    public required double SetNoisePercent { get; init; }

    /// <summary>SD of the day's form, common to the sets of a session, in percent.</summary>
    public double DayFormPercent { get; init; } = 0.8;

    /// <summary>Steady slowing per set, in percent of the first.</summary>
    public double DriftPercentPerSet { get; init; }

    /// <summary>The set after which the boxer breaks.</summary>
    public int BreakAfter { get; init; } = 3;

    /// <summary>How much slower every set after the break is, in percent.</summary>
    public double BreakPercent { get; init; }

    /// <summary>The station that carries the break alone, by its number from 1; null spreads it over all stations evenly.</summary>
    public int? BreakStation { get; init; }

    /// <summary>SD of how much faster or slower than planned the first set is gone out in, in percent of it.</summary>
    public double StartSpreadPercent { get; init; }

    /// <summary>What a first set 1 % off the expected one does to each later set, in percent: below 0 a faster start costs later.</summary>
    public double StartSlope { get; init; }

    /// <summary>Level against the middling boxer, in percent.</summary>
    public double LevelPercent { get; init; }

    /// <summary>What a set takes without noise, in seconds.</summary>
    public double ExpectedSet(int set) => ExpectedStations(set).Sum() + ExpectedTransitions(set);

    /// <summary>What the stations of a set take without noise, in seconds.</summary>
    public IReadOnlyList<double> ExpectedStations(int set)
    {
        var even = Test.StationSeconds.Select(seconds => seconds * Pace(set)).ToArray();
        if (set <= BreakAfter || BreakPercent == 0) return even;
        var lost = (even.Sum() + ExpectedTransitions(set)) * BreakPercent / 100;
        return [.. even.Select((seconds, index) => BreakStation is { } station ? seconds + (index + 1 == station ? lost : 0) : seconds + (lost * seconds / even.Sum()))];
    }

    /// <summary>What the transitions of a set take without noise, in seconds.</summary>
    public double ExpectedTransitions(int set) => Test.TransitionSeconds * Pace(set);

    /// <summary>Draws one session a week, with station times, read to 0.1 s.</summary>
    /// <param name="random">The stream.</param>
    /// <param name="count">How many sessions.</param>
    /// <param name="levels">A factor on the times of each session; null for 1.</param>
    public IReadOnlyList<Session> Sessions(SeededRandom random, int count, Func<int, double>? levels = null)
    {
        var sets = Enumerable.Range(1, Test.Protocol.Sets).ToArray();
        var expected = sets.Select(ExpectedStations).ToArray();
        return [.. Enumerable.Range(0, count).Select(session =>
        {
            var day = Math.Exp(random.NextNormal() * DayFormPercent / 100) * (levels?.Invoke(session) ?? 1);
            var times = new double[sets.Length];
            var stations = new List<StationTime>(sets.Length * expected[0].Count);
            // The noise of a set is drawn as independent noise of its stations, sized so that the set has the stated SD.
            var noise = Test.StationNoisePercent(SetNoisePercent) / 100;
            var start = StartSpreadPercent == 0 ? 1 : Math.Exp(random.NextNormal() * StartSpreadPercent / 100);
            var cost = 1.0;
            foreach (var set in sets)
            {
                var pace = day * (set == 1 ? start : cost);
                var whole = ExpectedTransitions(set) * pace;
                for (var station = 0; station < expected[set - 1].Count; station++)
                {
                    var seconds = expected[set - 1][station] * pace * Math.Exp(random.NextNormal() * noise);
                    whole += seconds;
                    stations.Add(new StationTime(set, station + 1, new Seconds(Math.Round(seconds, 1))));
                }

                times[set - 1] = Math.Round(whole, 1);
                if (set == 1 && StartSlope != 0) cost = Math.Pow(whole / (ExpectedSet(1) * day), StartSlope);
            }

            return Session.FromTimes($"{Id}-{session + 1}", Id, FirstDay.AddDays(7 * session), Test.Protocol, times) with { Stations = stations, TimingResolution = new Seconds(0.1) };
        })];
    }

    private double Pace(int set) => (1 + (LevelPercent / 100)) * (1 + (DriftPercentPerSet * (set - 1) / 100));
}
