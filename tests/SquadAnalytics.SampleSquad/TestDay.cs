namespace SquadAnalytics.SampleSquad;

/// <summary>Runs the tests of one boxer against the stopwatch, week by week.</summary>
internal sealed class TestDay(SampleScenario scenario, SampleBoxer boxer, BoxerTruth truth, Dice dice)
{
    private const double TransitionNoisePercent = 12;
    private readonly Dictionary<string, int> _testsDone = [];

    /// <summary>The test of a week. Weeks must be run in order: the first ones are slower while the test is new.</summary>
    public DraftTest Run(int week, double contextPercent, double temperature)
    {
        var isLong = week % scenario.LongEvery == 0;
        var test = isLong ? scenario.LongTest : boxer.Junior ? scenario.JuniorTest : scenario.MainTest;
        var effects = scenario.Effects;
        var before = _testsDone.GetValueOrDefault(test.Protocol.Id);
        _testsDone[test.Protocol.Id] = before + 1;

        var level = Factor(truth.LevelPercent) * Factor(truth.TrendPercentPerWeek * (week - 1)) * Factor(truth.BlockEffectPercent * BlockShare(week))
            * Factor(before < effects.LearningPercent.Count ? effects.LearningPercent[before] : 0);
        var day = Factor(contextPercent) * Noise(effects.DayFormPercent);
        var tooFast = boxer.Story is FastStart fast ? Math.Max(0, dice.Normal(fast.MeanPercent, fast.SpreadPercent)) : 0;
        var breakPercent = boxer.Story is LateBreak late ? Math.Max(0, dice.Normal(late.Percent, late.SpreadPercent)) : 0;
        var stationNoise = test.StationNoisePercent(boxer.Junior ? effects.JuniorSetNoisePercent : effects.SetNoisePercent);

        var sets = new List<SetTime>();
        var stations = new List<StationTime>();
        var expectedTotal = 0.0;
        for (var set = 1; set <= test.Protocol.Sets; set++)
        {
            var expected = StationsExpected(test, level * Pace(set, tooFast), set, breakPercent);
            var taken = expected.Select(seconds => seconds * day * Noise(stationNoise)).ToList();
            var transitions = test.TransitionSeconds * Noise(TransitionNoisePercent);
            sets.Add(new SetTime(set, Clock(taken.Sum() + transitions)));
            expectedTotal += expected.Sum() + test.TransitionSeconds;
            if (!isLong && week % scenario.StationsEvery == 0)
                stations.AddRange(taken.Select((seconds, index) => new StationTime(set, index + 1, Clock(seconds))));
        }

        var session = new Session("-", truth.AthleteId, scenario.TestDay(week), test.Protocol, sets)
        {
            Stations = stations,
            TimingResolution = new Seconds(0.1),
            Timer = "club watch, by hand",
            Place = "main hall",
            TemperatureCelsius = temperature,
        };
        return new DraftTest(session, expectedTotal);
    }

    private static double Factor(double percent) => 1 + (percent / 100);

    private static Seconds Clock(double seconds) => new(Math.Round(seconds, 1));

    private double Noise(double percent) => Math.Exp(dice.Normal(0, percent / 100));

    private double Pace(int set, double tooFastPercent)
    {
        var drift = Factor(truth.DriftPercentPerSet * (set - 1));
        if (boxer.Story is not FastStart story) return drift;
        return drift * (set == 1 ? Factor(-tooFastPercent) : Factor(story.Payback * tooFastPercent));
    }

    private double BlockShare(int week) => Math.Clamp((week - scenario.SecondBlockFromWeek + 1) / (double)scenario.Effects.BlockRampWeeks, 0, 1);

    private List<double> StationsExpected(SampleProtocol test, double factor, int set, double breakPercent)
    {
        var fresh = test.StationSeconds.Select(seconds => seconds * factor).ToList();
        if (boxer.Story is not LateBreak story || set <= story.AfterSet) return fresh;

        var weak = test.Protocol.Stations.Select(station => station.Name).ToList().IndexOf(story.Station);
        var lost = (fresh.Sum() + test.TransitionSeconds) * breakPercent / 100;
        var others = fresh.Sum() - fresh[weak];
        return [.. fresh.Select((seconds, index) => index == weak ? seconds + (story.StationShare * lost) : seconds + ((1 - story.StationShare) * lost * seconds / others))];
    }
}
