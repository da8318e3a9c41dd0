using SquadAnalytics.Change;
using SquadAnalytics.Frames;
using SquadAnalytics.Reliability;
using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.Sets;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Tests.Figures;

/// <summary>One example of every figure, from invented numbers.</summary>
internal static class Examples
{
    public static readonly Protocol Protocol = new("p", "Five rounds", [], 5, new Seconds(120));

    public static readonly IReadOnlyList<Session> Sessions =
    [
        .. new double[][] { [62.4, 63.1, 64.0, 69.2, 70.3], [61.8, 62.9, 63.2, 67.5, 69.8], [63.0, 62.2, 64.5, 66.9, 70.9], [60.9, 62.0, 63.8, 68.4, 68.8], [61.5, 62.8, 62.6, 66.2, 69.1], [60.8, 61.9, 63.1, 67.7, 67.9] }
            .Select((times, week) => Session.FromTimes($"s{week}", "a", new DateOnly(2031, 1, 7).AddDays(7 * week), Protocol, times) with { TimingResolution = new Seconds(0.1) }),
    ];

    public static IReadOnlyList<Figure> All() =>
    [
        Paced(), Stations(), Changed(), Rest(), Season(), Blocks(), Agreement(), Ranks(), Control(), Power(), Recovery(), Everyone(), ForWhom(), Together(), Standing(), EveryonesSeason(),
    ];

    public static HowWasItPaced Paced() => new("A1", Sessions[^1])
    {
        Earlier = [.. Sessions.Take(5)],
        SquadMedian = [new(66.0), new(67.1), new(67.9), new(68.8), new(70.2)],
        Noise = SetNoise.Fit(Sessions, new SetNoiseOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow(),
    };

    /// <summary>Four sessions whose stations slow by 3.2, 0.7, 1.0, 0.6 s on average and whose transitions by 0.3 s.</summary>
    public static IReadOnlyList<Session> WithStations()
    {
        var circuit = new Protocol("c", "Five rounds", [new("squats", 20), new("press-ups", 12), new("burpees", 10), new("skips", 60)], 2, new Seconds(120));
        double[][] early = [[18.2, 14.6, 16.0, 12.4, 62.4], [18.0, 14.9, 15.8, 12.6, 62.7], [17.6, 14.3, 15.9, 12.5, 61.5], [17.9, 14.5, 15.5, 12.3, 61.4]];
        double[][] late = [[21.6, 15.2, 17.0, 13.1, 68.6], [20.9, 15.6, 16.9, 13.0, 67.9], [21.2, 14.9, 16.6, 13.3, 67.5], [20.8, 15.4, 16.8, 12.8, 67.2]];
        return [.. early.Zip(late).Select((rows, week) => Session.FromTimes($"s{week}", "a", new DateOnly(2031, 1, 7).AddDays(7 * week), circuit, rows.First[4], rows.Second[4]) with
        {
            Stations = [.. Enumerable.Range(0, 4).SelectMany(j => (StationTime[])[new(1, j + 1, new Seconds(rows.First[j])), new(2, j + 1, new Seconds(rows.Second[j]))])],
        })];
    }

    public static StationSharesResult Shares() => StationShares.Fit(WithStations(), new StationSharesOptions { AfterSet = 1, Selection = SelectionOptions.KeepAll }).GetOrThrow();

    public static WhereDoesTheSlowdownArise Stations() => new("A1", Shares());

    /// <summary>Four weekly totals of eight athletes; a ninth has one test only.</summary>
    public static readonly IReadOnlyList<double[]> WeeklyTotals =
    [
        [329.0, 325.2, 327.1, 322.9], [298.4, 301.0, 296.2, 294.8], [356.1, 349.5, 352.0, 345.3], [312.7, 309.9, 313.5, 306.4],
        [341.0, 344.6, 337.2, 338.8], [285.3, 283.1, 286.0, 281.7], [367.9, 358.8, 361.4, 355.0], [320.5, 322.0, 315.9, 317.3], [310.0],
    ];

    public static Squad Squad()
    {
        var protocol = new Protocol("w", "Two rounds", [], 2, new Seconds(240));
        return new Squad(
            "Invented", [.. WeeklyTotals.Select((_, k) => new Athlete($"b{k + 1}", $"Boxer {k + 1}", $"B{k + 1}"))], [protocol],
            [.. WeeklyTotals.SelectMany((totals, k) => totals.Select((total, week) =>
                Session.FromTimes($"b{k + 1}w{week}", $"b{k + 1}", new DateOnly(2031, 3, 3).AddDays(7 * (week + 4 - totals.Length)), protocol, total / 2, total / 2)))]);
    }

    public static SquadChangesResult Changes()
    {
        var squad = Squad();
        return SquadChanges.Fit(
            squad.Sessions, TypicalError.Entered(new Seconds(2.55), 21, "an earlier season"), SmallestWorthwhileChange.Entered(new Seconds(5)),
            new SquadChangesOptions { Change = new AthleteChangeOptions { Selection = SelectionOptions.KeepAll } }).GetOrThrow();
    }

    public static WhereDoesEveryoneStand Standing() => new(
        Standings.Summarize(Squad(), TypicalError.Entered(new Seconds(2.5502713), 21, "entered"), new StandingsOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow(),
        [new PerformanceBand("Slate", new Seconds(260), new Seconds(300)), new PerformanceBand("Chalk", new Seconds(300), new Seconds(340)), new PerformanceBand("Flint", new Seconds(340), new Seconds(380))],
        id => $"Boxer {id[1..]}");

    public static HowDoesEveryonesSeasonGo EveryonesSeason() =>
        new(SquadTrend.Fit(Squad().Sessions, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow(), Squad());

    public static ForWhomDidItDiffer ForWhom() => new("Base", "Power", Changes(), Squad());

    public static WhoChanged Changed() => new(Changes(), Squad());

    public static HowMuchRestWasLeft Rest() => new("A1", Clock(110, 125, 130));

    public static WorkAndRestResult Clock(params double[] times) =>
        WorkAndRest.Summarize(Session.FromTimes("r", "a", new DateOnly(2031, 3, 4), new Protocol("t", "Three rounds", [], times.Length, new Seconds(120)), times)).GetOrThrow();

    public static IsTheAthleteImproving Season() => new("A1", [.. Sessions.Select(session => new DatedValue(session.Date, session.TimesSeconds.Sum()))])
    {
        Smooth = [.. Sessions.Select(session => new DatedValue(session.Date, 327))],
        Bands = [new PerformanceBand("Flint", new Seconds(300), new Seconds(325)), new PerformanceBand("Slate", new Seconds(325), new Seconds(350))],
        Blocks = [new TrainingBlock("b1", "Base", new DateOnly(2031, 1, 1), new DateOnly(2031, 1, 25))],
        WeeklyLoad = [new(new DateOnly(2031, 1, 6), 1800), new(new DateOnly(2031, 1, 20), 2100)],
        Trend = new Estimate(-0.944, Unit.SecondsPerWeek, 6, "least squares") { Interval = new Interval(-1.132, -0.756, default) },
    };

    public static DidTheBlocksDiffer Blocks() => new(
        "Base", "Power",
        [new("A", new Seconds(328.8), new Seconds(322.7)), new("B", new Seconds(300.1), new Seconds(296.1)), new("C", new Seconds(305.0), new Seconds(306.2))],
        Given.Seconds(-2.97, -6.6, 0.7))
    { SmallestWorthwhile = new Seconds(4) };

    public static HowNoisyIsTheTest Agreement()
    {
        var complete = WeeklyTotals.Take(8).ToList();
        return new(
            [.. complete.Select((totals, k) => new AgreementPair($"B{k + 1}", new Seconds(totals[0]), new Seconds(totals[1])))],
            LimitsOfAgreement.FitPairs([.. complete.Select(totals => totals[0])], [.. complete.Select(totals => totals[1])], ConfidenceLevel.NinetyFive).GetOrThrow());
    }

    public static WhoRanksWhere Ranks() => new([new("C", 2.945636, 2, 3), new("A", 1.209021, 1, 2), new("B", 1.845343, 1, 2)], default);

    public static IsThisTestOutOfLine Control() => new(
        "A1",
        [.. new[] { 322.4, 325.9, 323.1, 326.8, 324.2, 321.7, 325.0, 323.6, 326.1, 322.9, 333.0 }.Select((total, week) =>
            new ControlPoint(new DateOnly(2031, 1, 7).AddDays(7 * week), new Seconds(total), week < 10, week == 10 ? "one beyond three sigma" : null))],
        new Seconds(324.17), new Seconds(316.6345), new Seconds(331.7055), "one beyond three sigma");

    public static HowManyMoreTests Power() => new(
        [new("3 s", [new(1, 0.31), new(2, 0.55), new(3, 0.72), new(4, 0.83)]), new("2 s", [new(1, 0.18), new(2, 0.3), new(3, 0.41), new(4, 0.5)])],
        0.8, "typical error 2.6 s, 90 % intervals");

    public static HowMuchDoesTheClockExplain Recovery() => new(
        "A1", [new(60.1), new(62.0), new(63.5), new(66.2)], [new(60.0), new(62.2), new(63.1), new(63.5)], [new(60.0), new(62.2), new(63.0), new(63.3)], new Seconds(60));

    public static HowDoesEveryonePace Everyone() => new(
        [new("A1", [new(62.4), new(63.1), null, new(69.2)]), new("Øystein Overlangennavnesen", [new(60), new(61), new(61), new(59)])], "session of 4 Mar 2031");

    /// <summary>Seven athletes' totals by day, of whom five are told apart, and one row without a total.</summary>
    public static HowDoTheyGoTogether Together()
    {
        var rows = Enumerable.Range(0, 7).SelectMany(athlete => Enumerable.Range(0, 6).Select(week => (Athlete: $"Athlete {athlete + 1}", Day: new DateOnly(2031, 1, 7).AddDays(7 * week), Total: (double?)(320 + (5 * athlete) - (1.5 * week) + (week % 2))))).ToList();
        rows.Add(("Athlete 1", new DateOnly(2031, 3, 4), null));
        return new Frame(FrameColumn.OfTexts("athlete", rows.Select(row => row.Athlete)), FrameColumn.OfDates("test_date", rows.Select(row => (DateOnly?)row.Day)), FrameColumn.OfNumbers("total_s", rows.Select(row => row.Total)))
            .Plot("test_date", "total_s", by: "athlete");
    }
}
