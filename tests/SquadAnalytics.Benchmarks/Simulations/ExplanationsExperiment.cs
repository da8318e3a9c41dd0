using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Load;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>What explains the slow-down: how often a wrong cause is named, how often the planted one is, and the coverage of the effects.</summary>
/// <param name="sessions">Sessions of the boxer.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="plot">What is planted.</param>
/// <param name="isSearched">Whether the set is searched for.</param>
internal sealed class ExplanationsExperiment(int sessions, double noisePercent, Plot plot, bool isSearched) : Experiment
{
    private const int AfterSet = 3;
    private const int Station = 2;
    private readonly VirtualBoxer _boxer = new()
    {
        SetNoisePercent = noisePercent,
        DriftPercentPerSet = plot is Plot.Drift or Plot.DriftAndStation ? 0.6 : 0,
        BreakAfter = AfterSet,
        BreakPercent = plot is Plot.Break or Plot.DriftAndStation ? 5 : 0,
        BreakStation = plot == Plot.DriftAndStation ? Station : null,
        StartSpreadPercent = plot == Plot.FastStart ? 4 : 0,
        StartSlope = plot == Plot.FastStart ? -0.6 : 0,
    };

    /// <summary>Above 12 sessions the search draws 9 999 flips.</summary>
    public override bool IsSlow => sessions > 12;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"explanations, {sessions} sessions, set noise {noisePercent} %, {plot.Words()}, set {(isSearched ? "searched for" : "named")}");

    public override IReadOnlyList<Question> Questions =>
    [
        new("a cause that is not there supported", Promise.AtMost, 0.05),
        .. Enum.GetValues<ExplanationCause>().Where(cause => cause != ExplanationCause.ClockFeedback).Select(Named),
        plot is Plot.Nothing or Plot.FastStart ? new("cannot tell") : new("noise supported although more than it is there", Promise.AtMost, 0.05),
        new("a planted cause called not supported", Promise.AtMost, 0.05),
        Interval("slow-down", Covering),
        Interval("slope beside the step", Covering),
        Interval("step beside the slope", Covering),
        .. isSearched
            ? new[] { Interval("slow-down, all sets to search together", Joint), Interval("slope beside the step, all sets to search together", Joint), Interval("step beside the slope, all sets to search together", Joint) }
            : [],
        Interval("slow-down of the station picked beyond an even share", Promise.AtLeast),
        Interval("slow-down beyond an even share, all stations together"),
        Interval("correlation with sleep"),
    ];

    /// <summary>Limits after a search hold for all sets together, so that they hold for the one that is picked at least as often.</summary>
    private Promise Covering => isSearched ? Promise.AtLeast : Promise.Exactly;

    /// <summary>Starts that vary and cost move all later sets together: limits for independent sets are then wider than need be.</summary>
    private Promise Joint => plot == Plot.FastStart ? Promise.AtLeast : Promise.Exactly;

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var tests = _boxer.Sessions(random, sessions);
        DayContext[] days = [.. tests.Select(test => new DayContext(test.AthleteId, test.Date) { SleepHours = 7 + random.NextNormal() })];
        var options = new ExplanationsOptions { AfterSet = isSearched ? null : AfterSet, Days = days, Circumstance = Circumstance.Sleep, Level = Level, Selection = SelectionOptions.KeepAll };
        if (!Explanations.Fit(tests, options).TryGet(out var result)) return new Reply[Questions.Count];
        bool Stands(ExplanationCause cause, ExplanationStanding standing) => result[cause].Standing == standing;
        var planted = Planted();
        double[] profile = [.. Enumerable.Range(1, _boxer.Test.Protocol.Sets).Select(_boxer.ExpectedSet)];
        var (late, slope, step) = Truth(profile, result.AfterSet);
        return
        [
            result.Supported.Any(found => found.Cause != ExplanationCause.Noise && !planted.Contains(found.Cause)),
            .. Enum.GetValues<ExplanationCause>().Where(cause => cause != ExplanationCause.ClockFeedback).Select(cause => (bool?)IsNamed(result, cause)),
            plot is Plot.Nothing or Plot.FastStart ? result.CannotTell : Stands(ExplanationCause.Noise, ExplanationStanding.Supported),
            planted.Any(cause => Stands(cause, ExplanationStanding.NotSupported)),
            Covers(result.Slowdown, late),
            Covers(Effect(result, ExplanationCause.SteadyDrift), slope),
            Covers(Effect(result, ExplanationCause.LateBreak), step),
            .. isSearched ? new Reply[] { Together(tests, profile, Contrasts.Late), Together(tests, profile, Contrasts.SlopeBesideStep), Together(tests, profile, Contrasts.Kink) } : [],
            Covers(Effect(result, ExplanationCause.OneStation), StationTruth(result)),
            StationsTogether(tests, result.AfterSet),
            Covers(Effect(result, ExplanationCause.Circumstance), 0),
        ];
    }

    private static Estimate? Effect(ExplanationsResult result, ExplanationCause cause) => result[cause].Effect.TryGet(out var effect) ? effect : null;

    private ExplanationCause[] Planted() => plot switch
    {
        Plot.Drift => [ExplanationCause.SteadyDrift],
        Plot.Break => [ExplanationCause.LateBreak],
        Plot.DriftAndStation => [ExplanationCause.SteadyDrift, ExplanationCause.LateBreak, ExplanationCause.OneStation],
        Plot.FastStart => [ExplanationCause.FastStart],
        _ => [],
    };

    private bool IsNamed(ExplanationsResult result, ExplanationCause cause) => result[cause].Standing == ExplanationStanding.Supported
        && (cause != ExplanationCause.OneStation || plot != Plot.DriftAndStation || result[cause].Name.EndsWith(_boxer.Test.Protocol.Stations[Station - 1].Name, StringComparison.Ordinal))
        && (cause != ExplanationCause.LateBreak || !Planted().Contains(cause) || result.AfterSet == AfterSet);

    private Question Named(ExplanationCause cause)
    {
        var text = "supported: " + cause.Words();
        var isThere = Planted().Contains(cause);
        if (cause == ExplanationCause.Noise) return new Question(text);
        if (!isThere) return new Question(text, Promise.AtMost, 0.05);
        var isPromised = sessions >= 12 && noisePercent <= 1 && cause is ExplanationCause.LateBreak or ExplanationCause.OneStation;
        return isPromised ? new Question(text, Promise.AtLeast, 0.80) : new Question(text);
    }

    private static (double Late, double Slope, double Step) Truth(double[] profile, int after)
    {
        var sets = profile.Select((_, index) => index + 1.0).ToArray();
        double[] behind = [.. sets.Select(set => set > after ? 1.0 : 0)];
        // The same regression on the profile without noise; with a perfect fit its coefficients are exact.
        var fit = LeastSquares.Fit(profile, RegressionDesign.WithIntercept(profile.Length).Add("set", sets).Add("behind", behind)).GetOrThrow();
        return (profile.Skip(after).Average() - profile.Take(after).Average(), fit.Coefficient("set").Value, fit.Coefficient("behind").Value);
    }

    /// <summary>Whether the limits for every set that might have been found hold at once; a step is a kink but for a factor.</summary>
    private bool Together(IReadOnlyList<Session> tests, double[] profile, Func<int, int, double[]> weights)
    {
        var every = Contrasts.Every(profile.Length, weights);
        var choices = EffectiveChoices.Of(every, tests.Count, Level);
        return every.All(own => Covers(TInterval.OfMean([.. tests.Select(test => Contrasts.Apply(own, [.. test.TimesSeconds]))], Unit.Seconds, Level, "one set", choices: choices), Contrasts.Apply(own, profile)) == true);
    }

    /// <summary>Whether the limits of every station's slow-down beyond an even share, the transitions left out, hold at once.</summary>
    private bool? StationsTogether(IReadOnlyList<Session> tests, int after)
    {
        if (!StationShares.Fit(tests, new StationSharesOptions { AfterSet = after, Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var shares)) return null;
        var rows = shares.Rows.Where(row => row is { Station: not null, ExcessPValue: not null }).ToList();
        if (rows.Count == 0) return null;
        return rows.All(row => Covers(TInterval.Of(row.Excess.Value, row.Excess.StandardError!.Value, row.Excess.DegreesOfFreedom!.Value, Unit.Seconds, Level, row.Excess.Observations, "one station", choices: rows.Count), StationTruth(row.Station!.Value - 1, after)) == true);
    }

    private double StationTruth(ExplanationsResult result)
    {
        var index = _boxer.Test.Protocol.Stations.ToList().FindIndex(station => result[ExplanationCause.OneStation].Name.EndsWith(station.Name, StringComparison.Ordinal));
        return index < 0 ? 0 : StationTruth(index, result.AfterSet);
    }

    private double StationTruth(int index, int after)
    {
        var sets = Enumerable.Range(1, _boxer.Test.Protocol.Sets).ToList();
        double Mean(bool isLate, Func<int, double> time) => sets.Where(set => set > after == isLate).Average(time);
        double Own(int set) => _boxer.ExpectedStations(set)[index];
        return Mean(true, Own) - Mean(false, Own) - ((Mean(true, _boxer.ExpectedSet) - Mean(false, _boxer.ExpectedSet)) * Mean(false, Own) / Mean(false, _boxer.ExpectedSet));
    }
}
