using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Two training blocks of the same athletes.</summary>
public static class BlockComparison
{
    private const int NeededAthletes = 4;
    private const int FewAthletes = 6;
    private const int RankNeeds = 5;

    /// <summary>Compares each athlete's mean total of the second block with that of the first.</summary>
    /// <remarks>
    /// <para>d_i = mean of block 2 - mean of block 1 of athlete i, in seconds; mean d with a t interval on athletes - 1 degrees of freedom; on logarithms for percent. Unequal counts make Var(d_i) = ω² +
    /// σ² (1/n_i1 + 1/n_i2), ω the spread of true changes, σ the noise within a block, the second term v_i: the plain t stays valid. The weighted mean uses weights 1/(ω² + v_i), ω² by REML and the Knapp-Hartung interval (Knapp and Hartung 2003, Stat Med
    /// 22:2693-2710; from memory). Beside them the median of the Walsh averages (Hodges and Lehmann 1963, Ann Math Stat 34:598-611; from memory) and sign flipping. Assumes independent
    /// athletes; an outlier moves the mean, not the median.</para>
    /// <para>Standardised changes use Hedges's factor 1 - 3/(4 df - 1) (Hedges 1981, J Educ Stat 6:107-128; from memory) and name their standard deviation.</para>
    /// </remarks>
    /// <param name="sessions">All sessions of the squad, in any order.</param>
    /// <param name="first">The earlier block.</param>
    /// <param name="second">The later block; it begins after the first ends.</param>
    /// <param name="options">Level, tests needed, selection; null for the defaults.</param>
    /// <returns>The comparison, or <see cref="Refusal.TooFewAthletes"/> below 4 athletes with enough tests in both blocks, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The blocks overlap or are in the wrong order.</exception>
    public static Answer<BlockComparisonResult> Fit(IReadOnlyList<Session> sessions, TrainingBlock first, TrainingBlock second, BlockComparisonOptions? options = null)
    {
        options ??= new BlockComparisonOptions();
        return BlockTests.Of(sessions, first, second, options.Selection).Match(tests => Of(tests, options), refusal => refusal);
    }

    private static Answer<BlockComparisonResult> Of(BlockTests tests, BlockComparisonOptions options)
    {
        bool IsIn(OwnBlockTests own) => own.First.Count >= options.TestsPerBlock && own.Second.Count >= options.TestsPerBlock;
        var used = tests.Athletes.Where(IsIn).ToList();
        if (used.Count < NeededAthletes)
            return new NotEstimable("the difference between the blocks", Refusal.TooFewAthletes, NeededAthletes, used.Count, FormattableString.Invariant($"athletes with {options.TestsPerBlock} tests in each block"));

        AthleteBlocks[] rows = [.. used.Select(own => new AthleteBlocks(own.AthleteId, own.First.Count, own.Second.Count, Mean(own.First, Seconds), Mean(own.Second, Seconds)))];
        LeftOutAthlete[] leftOut = [.. tests.Athletes.Where(own => !IsIn(own)).Select(own => own.LeftOut(options.TestsPerBlock))];
        double[] changes = [.. rows.Select(row => row.ChangeSeconds)];
        double[] relative = [.. used.Select(own => Mean(own.Second, LogSeconds) - Mean(own.First, LogSeconds))];
        var within = Within(used, options.Level);
        var weighted = Weighted(rows, within, options.Level);
        return new BlockComparisonResult
        {
            Change = TInterval.OfMean(changes, Unit.Seconds, options.Level, "one-sample t over athletes").WithNotes([.. Notes(tests, rows.Length, leftOut)]),
            RelativeChange = TInterval.OfMean(relative, Unit.Percent, options.Level, "one-sample t over athletes, logarithms"),
            WeightedChange = weighted.Select(fit => fit.Mean),
            SpreadOfTrueChanges = weighted.Select(fit => fit.BetweenStandardDeviation),
            RankChange = Ranked(changes, options.Level),
            SignFlipPValue = SignFlipTest.Fit(changes).Select(test => new Estimate(test.PValue, Unit.Probability, changes.Length, test.IsExact ? "all sign flips of the changes" : "random sign flips of the changes")),
            StandardDeviationOfChanges = TInterval.OfStandardDeviation(Descriptive.StandardDeviation(changes), changes.Length - 1, Unit.Seconds, options.Level, changes.Length, "SD of the athletes' changes"),
            WithinBlock = within,
            Standardized = Standardized(rows, Descriptive.Mean(changes), Descriptive.StandardDeviation(changes)),
            Athletes = rows,
            LeftOut = leftOut,
            First = tests.Attendance(tests.First, own => own.First),
            Second = tests.Attendance(tests.Second, own => own.Second),
            Selection = tests.Selection,
        };
    }

    private static Answer<Estimate> Within(IReadOnlyList<OwnBlockTests> used, ConfidenceLevel level)
    {
        var cells = used.SelectMany(own => new[] { own.First, own.Second }).ToList();
        double[] squares = [.. cells.SelectMany(cell => cell.Select(session => Math.Pow(Seconds(session) - Mean(cell, Seconds), 2)))];
        var df = squares.Length - cells.Count;
        if (df == 0) return new NotEstimable("the noise within a block", Refusal.TooFewSessions, "an athlete with 2 tests in a block", "none");
        var deviation = Math.Sqrt(Descriptive.Sum(squares) / df);
        return deviation > 0
            ? TInterval.OfStandardDeviation(deviation, df, Unit.Seconds, level, squares.Length, "pooled SD of an athlete's tests within a block")
            : new NotEstimable("the noise within a block", Refusal.ZeroVariance, "tests that vary within a block", "tests that do not");
    }

    private static Answer<MetaAnalysisFit> Weighted(AthleteBlocks[] rows, Answer<Estimate> within, ConfidenceLevel level) => within.Match(
        noise => MetaAnalysis.Fit(
            [.. rows.Select(row => new MeasuredEffect(row.AthleteId, row.ChangeSeconds, noise.Value * noise.Value * (1.0 / row.FirstTests + 1.0 / row.SecondTests)))],
            new MetaAnalysisOptions { ConfidenceLevel = level, Unit = Unit.Seconds }),
        refusal => refusal);

    private static Answer<Estimate> Ranked(double[] changes, ConfidenceLevel level) => changes.Length < RankNeeds
        ? new NotEstimable("the rank-based change", Refusal.TooFewAthletes, RankNeeds, changes.Length, "athletes")
        : SignedRankTest.Fit(changes, level).Select(test => new Estimate(test.HodgesLehmann, Unit.Seconds, changes.Length, test.IsExact ? "Hodges-Lehmann, exact signed rank" : "Hodges-Lehmann, signed rank by normal approximation")
        {
            Interval = test.Interval,
            PValue = test.PValue,
            Notes = test.AchievedConfidence is { } achieved
                ? [FormattableString.Invariant($"The interval's confidence is {100 * achieved:0.0} %, the closest above the level that {changes.Length} athletes allow.")]
                : ["Too few changes for an interval at this level."],
        });

    private static IReadOnlyList<StandardizedChange> Standardized(AthleteBlocks[] rows, double change, double ofChanges)
    {
        double first = Descriptive.Variance([.. rows.Select(row => row.FirstMeanSeconds)]), second = Descriptive.Variance([.. rows.Select(row => row.SecondMeanSeconds)]);
        var factor = HedgesCorrection.Approximate(rows.Length - 1);
        StandardizedChange In(string name, double deviation) => new(name, new Seconds(deviation), change / deviation, factor * change / deviation);
        (string Name, double Deviation)[] standards =
        [
            ("SDs of the athletes in the first block", Math.Sqrt(first)),
            ("average SDs of the athletes in both blocks", Math.Sqrt((first + second) / 2)),
            ("SDs of the changes", ofChanges),
        ];
        return [.. standards.Where(standard => standard.Deviation > 0).Select(standard => In(standard.Name, standard.Deviation))];
    }

    private static IEnumerable<string> Notes(BlockTests tests, int athletes, LeftOutAthlete[] leftOut)
    {
        if (athletes < FewAthletes) yield return $"Only {athletes} athletes: the interval leans on the assumption of normal changes.";
        if (leftOut.Length > 0) yield return $"{leftOut.Length} left out: {string.Join(", ", leftOut.Select(athlete => $"{athlete.AthleteId} ({athlete.Reason})"))}.";
        foreach (var note in tests.Notes()) yield return note;
    }

    private static double Mean(IReadOnlyList<Session> sessions, Func<Session, double> value) => Descriptive.Mean([.. sessions.Select(value)]);

    private static double Seconds(Session session) => session.Total.GetOrThrow().Value;

    private static double LogSeconds(Session session) => Math.Log(Seconds(session));
}
