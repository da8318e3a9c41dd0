using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Times the squad analyses against the number of sessions and prints the slope on logarithms: 1 is linear.</summary>
internal sealed class ScalingJob : Job
{
    private const int Smallest = 1_000;
    private const int Boxers = 10;
    private const double LinearAtMost = 1.15;

    public override string Name => "scaling";

    public override string Summary => "Time of each squad analysis from 10^3 to 10^6 sessions, with the log-log slope.";

    public override string Usage => """
        scaling [--most N] [--only WORD] [--long] [--out FILE]
          --most  the largest number of sessions, a power of ten (default 1000000, at least 10000; a million needs about 4 GB)
          --only  analyses whose name contains the word
          --long  ten boxers whose tests grow, in place of a squad that grows
        The slope is taken from 10^4 sessions on, where fixed costs no longer count. The exit code is 1 where one is above 1.15.
        An analysis that refuses so many tests of one athlete says so in its cell.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var most = Option(arguments, "--most") is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : 1_000_000;
        if (most < 10 * Smallest)
        {
            Console.Error.WriteLine("A slope needs two sizes: --most is at least 10000.");
            return 2;
        }

        var only = Option(arguments, "--only") ?? "";
        var analyses = Analyses().Where(analysis => analysis.Name.Contains(only, StringComparison.Ordinal)).ToList();
        var points = analyses.Select(_ => new List<(double Sessions, double? Seconds)>()).ToList();
        var isLong = arguments.Contains("--long");
        Squad Draw(int sessions) => LargeSquad.Draw(sessions, seed: 1, isLong ? sessions / Boxers : LargeSquad.SessionsEach);
        // The smallest squad once unmeasured, so that nothing is compiled while the clock runs.
        foreach (var analysis in analyses) Seconds(analysis.Work, Draw(Smallest), runs: 1, warmUps: 0);
        for (var sessions = Smallest; sessions <= most; sessions *= 10)
        {
            var squad = Draw(sessions);
            foreach (var (index, analysis) in analyses.Index())
            {
                GC.Collect();
                var seconds = Seconds(analysis.Work, squad, runs: sessions <= 10_000 ? 5 : 1, warmUps: sessions <= 10_000 ? 1 : 0);
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{squad.Sessions.Count} sessions, {analysis.Name}: {Cell(seconds)} s"));
                points[index].Add((squad.Sessions.Count, seconds));
            }
        }

        var lines = new List<string> { $"| analysis | {string.Join(" | ", points[0].Select(point => point.Sessions.ToString("#,0", CultureInfo.InvariantCulture) + " sessions, s"))} | slope |", $"| --- | {string.Concat(points[0].Select(_ => "---: | "))}---: |" };
        var steep = 0;
        foreach (var (index, analysis) in analyses.Index())
        {
            var slope = Slope([.. points[index].Skip(points[index].Count > 2 ? 1 : 0).Where(point => point.Seconds is not null).Select(point => (point.Sessions, point.Seconds!.Value))]);
            if (slope > LinearAtMost) steep++;
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"| {analysis.Name} | {string.Join(" | ", points[index].Select(point => Cell(point.Seconds)))} | {slope:0.00} |"));
        }

        foreach (var line in lines) Console.WriteLine(line);
        if (Option(arguments, "--out") is { } file)
            File.WriteAllText(file, $"# Time against sessions\n\nCommand `scaling{(isLong ? " --long" : "")}`, seed 1, commit {Provenance.Commit()}, {Provenance.Machine()}. Slope of log time on log sessions from 10^4 on; 1 is linear.\n\n{string.Join('\n', lines)}\n");
        return steep == 0 ? 0 : 1;
    }

    private static IReadOnlyList<(string Name, Action<Squad> Work)> Analyses()
    {
        var worthwhile = SmallestWorthwhileChange.Entered(new Seconds(3.6));
        var error = TypicalError.Entered(new Seconds(3.4), 200, "entered for timing");
        return
        [
            ("selection of sessions", squad => SessionSelection.Of(squad.Sessions).GetOrThrow()),
            ("set profile of each session", squad => Each(squad.Sessions, session => SetProfile.Summarize(session))),
            ("fatigue indices of each session", squad => Each(squad.Sessions, session => FatigueIndices.Summarize(session))),
            ("slope of each session", squad => Each(squad.Sessions, session => SetSlope.Fit(session))),
            ("work and rest of each session", squad => Each(squad.Sessions, session => WorkAndRest.Summarize(session))),
            ("set noise of each athlete", squad => Each(squad.Athletes, athlete => SetNoise.Fit(squad.SessionsOf(athlete.Id)))),
            ("late slow-down of each athlete, named", squad => Each(squad.Athletes, athlete => LateSlowdown.Fit(squad.SessionsOf(athlete.Id), new LateSlowdownOptions { AfterSet = 3 }))),
            ("late slow-down of each athlete, searched", squad => Each(squad.Athletes, athlete => LateSlowdown.Fit(squad.SessionsOf(athlete.Id)))),
            ("shapes of each athlete", squad => Each(squad.Athletes, athlete => ShapeComparison.Fit(squad.SessionsOf(athlete.Id)))),
            ("starts of each athlete", squad => Each(squad.Athletes, athlete => StartingTooFast.Fit(squad.SessionsOf(athlete.Id)))),
            ("recovery of each athlete", squad => Each(squad.Athletes, athlete => Recovery.Fit(squad.SessionsOf(athlete.Id)))),
            ("explanations of each athlete", ExplainEach),
            ("season trend of each athlete", squad => Each(squad.Athletes, athlete => SeasonTrend.Fit(squad.SessionsOf(athlete.Id)))),
            ("season level of each athlete", squad => Each(squad.Athletes, athlete => SeasonLevel.Fit(squad.SessionsOf(athlete.Id)))),
            ("last digits of all times", squad => DigitHeaping.Fit([.. squad.Sessions.SelectMany(session => session.TimesSeconds)], new Seconds(0.1)).GetOrThrow()),
            ("shrunken changes of the squad", squad => ChangeShrinkage.Fit(SquadChanges.Fit(squad.Sessions, error, worthwhile).GetOrThrow(), worthwhile).GetOrThrow()),
            ("typical error", squad => TypicalError.Fit(squad.Sessions).GetOrThrow()),
            ("intraclass correlation", squad => IntraclassCorrelation.Fit(squad.Sessions).GetOrThrow()),
            ("consecutive pairs", squad => ConsecutivePairs.Fit(squad.Sessions).GetOrThrow()),
            ("limits of agreement", squad => LimitsOfAgreement.Fit(squad.Sessions, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll with { To = squad.Sessions.Min(session => session.Date).AddDays(7) } }).GetOrThrow()),
            ("familiarisation", squad => Familiarisation.Fit(squad.Sessions, worthwhile).GetOrThrow()),
            ("changes of the squad", squad => SquadChanges.Fit(squad.Sessions, error, worthwhile).GetOrThrow()),
            ("season of the squad", squad => SquadTrend.Fit(squad.Sessions).GetOrThrow()),
            ("bests of the squad", squad => PersonalBests.OfSquad(squad.Sessions, error).GetOrThrow()),
            ("standing of the squad", squad => Standings.Summarize(squad, error).GetOrThrow()),
            ("spread of responses", squad => ResponseSpread.OfSeason(SquadTrend.Fit(squad.Sessions).GetOrThrow()).GetOrThrow()),
            ("set profiles of the squad", squad => ProfileModel.Fit(squad.Sessions, new ProfileModelOptions(3)).GetOrThrow()),
            ("two blocks", squad => BlockComparison.Fit(squad.Sessions, squad.Blocks[0], squad.Blocks[1]).GetOrThrow()),
            ("two blocks, mixed model", squad => BlockModel.Fit(squad.Sessions, squad.Blocks[0], squad.Blocks[1]).GetOrThrow()),
            ("what else differed between blocks", squad => BlockCircumstances.Summarize(squad, squad.Blocks[0], squad.Blocks[1]).GetOrThrow()),
            ("weekly series of the squad", squad => InterruptedSeries.FitSquad(squad.Sessions, squad.Blocks[1].From).GetOrThrow()),
            ("load and totals", squad => LoadAssociation.Fit(squad.Sessions, squad.Contexts, new LoadAssociationOptions { Windows = [new LoadWindow(1, 1)] }).GetOrThrow()),
            ("circumstances and totals", squad => CovariateModel.Fit(squad.Sessions, squad.Contexts).GetOrThrow()),
        ];
    }

    private static void ExplainEach(Squad squad)
    {
        var days = squad.Contexts.ToLookup(day => day.AthleteId);
        Each(squad.Athletes, athlete => Explanations.Fit(squad.SessionsOf(athlete.Id), new ExplanationsOptions { Days = [.. days[athlete.Id]] }));
    }

    private static void Each<T, TResult>(IReadOnlyList<T> items, Func<T, TResult> work)
    {
        foreach (var item in items) work(item);
    }

    private static double? Seconds(Action<Squad> work, Squad squad, int runs, int warmUps)
    {
        try
        {
            return Stopwatching.MedianSeconds(() => work(squad), runs, warmUps);
        }
        catch (NotEstimableException refused) when (refused.Refusal.Reason == Refusal.TooManyObservations)
        {
            return null;
        }
    }

    private static string Cell(double? seconds) => seconds?.ToString("0.0000", CultureInfo.InvariantCulture) ?? "refused";

    private static double? Slope(IReadOnlyList<(double Sessions, double Seconds)> points)
    {
        if (points.Count < 2) return null;
        var x = points.Select(point => Math.Log(point.Sessions)).ToArray();
        var y = points.Select(point => Math.Log(point.Seconds)).ToArray();
        double meanX = x.Average(), meanY = y.Average();
        return x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum() / x.Sum(a => (a - meanX) * (a - meanX));
    }
}
