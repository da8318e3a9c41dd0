using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>The recovery recursion on data that obey it: coverage of the set of time constants and how often it is refused.</summary>
/// <param name="sessions">Sessions of the boxer.</param>
/// <param name="noiseSeconds">SD of a set, in seconds.</param>
internal sealed class RecoveryExperiment(int sessions, double noiseSeconds) : Experiment
{
    private const double Fresh = 60;
    private const double PerFatigue = 6;
    internal const double TimeConstant = 60;
    private static readonly Protocol Circuit = new("quay", "Quay circuit", [new Station("burpees", 8), new Station("squats", 15), new Station("press-ups", 12), new Station("lunges", 16)], 5, new Seconds(120));
    private static readonly DateOnly FirstDay = new(2030, 9, 5);

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"recovery, {sessions} sessions, set noise {noiseSeconds:0.##} s, 60 s fresh, 6 s per unit of fatigue, time constant 60 s");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("set of time constants, given or refused"),
        // What is given is the set that stays off the edges: among those the true value is in more of them.
        Interval("time constant, where it is given", Promise.AtLeast),
        new("refused as weakly identified"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        Session[] tests = [.. Enumerable.Range(0, sessions).Select(week => Session.FromTimes("s" + week, "a1", FirstDay.AddDays(7 * week), Circuit, Draw(random)))];
        Recovery.Fit(tests, new RecoveryOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var fit);
        var region = Recovery.Region([.. tests.Select(test => RollingClock.Run([.. test.TimesSeconds], Circuit.Sets, Circuit.StartInterval!.Value.Value))], Level);
        return [region.Lower <= TimeConstant && TimeConstant <= region.Upper, Covers(fit?.TimeConstant, TimeConstant), fit is null];
    }

    private double[] Draw(SeededRandom random) => Draw(random, noiseSeconds);

    /// <summary>Work times of one session that obeys the recursion.</summary>
    internal static double[] Draw(SeededRandom random, double noise)
    {
        var times = new double[Circuit.Sets];
        double fatigue = 0;
        for (var set = 0; set < times.Length; set++)
        {
            times[set] = Fresh + (PerFatigue * fatigue) + (noise * random.NextNormal());
            fatigue = (fatigue + 1) * Math.Exp(-Math.Max(0, 120 - times[set]) / TimeConstant);
        }

        return times;
    }
}
