using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Two blocks in one mixed model: the second opinion beside <see cref="BlockComparison"/>.</summary>
public static class BlockModel
{
    private const int NeededAthletes = 4;

    /// <summary>Fits totals on the block with random athletes.</summary>
    /// <remarks>
    /// W = β0 + β1 block (+ β2 week) + u0_i + u1_i block + e by REML, (u0, u1) correlated; W the session total in seconds, block 0 or 1, week counted
    /// from the second block, u0 and u1 the athletes' own deviations and e noise, all normal. Uses athletes with tests in one block only, on the assumption that their absence says nothing
    /// about their times. Where the variances cannot all be told apart the random part is simplified and the notes say how. Degrees of freedom of mixed models are approximate.
    /// Source: Patterson and Thompson 1971, Biometrika 58:545-554; Bates et al. 2015, J Stat Softw 67(1) (both from memory).
    /// </remarks>
    /// <param name="sessions">All sessions of the squad, in any order.</param>
    /// <param name="first">The earlier block.</param>
    /// <param name="second">The later block; it begins after the first ends.</param>
    /// <param name="options">Random part, trend, level, selection; null for the defaults.</param>
    /// <returns>The difference, or <see cref="Refusal.TooFewAthletes"/> below 4 athletes with tests in both blocks, <see cref="Refusal.MixedProtocols"/>, or what <see cref="MixedModel.Fit"/> refuses.</returns>
    /// <exception cref="ArgumentException">The blocks overlap or are in the wrong order.</exception>
    public static Answer<BlockModelResult> Fit(IReadOnlyList<Session> sessions, TrainingBlock first, TrainingBlock second, BlockModelOptions? options = null)
    {
        options ??= new BlockModelOptions();
        return BlockTests.Of(sessions, first, second, options.Selection).Match(tests => Of(tests, options), refusal => refusal);
    }

    private static Answer<BlockModelResult> Of(BlockTests tests, BlockModelOptions options)
    {
        var both = tests.Athletes.Count(own => own.First.Count > 0 && own.Second.Count > 0);
        if (both < NeededAthletes) return new NotEstimable("the difference between the blocks", Refusal.TooFewAthletes, NeededAthletes, both, "athletes with tests in both blocks");
        var rows = tests.Athletes.SelectMany(own => own.First.Select(session => (session, 0.0)).Concat(own.Second.Select(session => (session, 1.0)))).ToList();
        var block = new DesignColumn("block", [.. rows.Select(row => row.Item2)], Unit.Seconds);
        List<DesignColumn> columns = [DesignColumn.Intercept(rows.Count, Unit.Seconds), block];
        if (options.WithTrend) columns.Add(new DesignColumn("week", [.. rows.Select(row => SeasonWeeks.Between(tests.Second.From, row.session.Date))], Unit.SecondsPerWeek));
        string[] athletes = [.. rows.Select(row => row.session.AthleteId)];
        var design = new MixedDesign(
            new DesignColumn("total", [.. rows.Select(row => row.session.Total.GetOrThrow().Value)]),
            columns,
            [options.AthletesDiffer ? RandomTerm.InterceptAndSlope("athlete", athletes, block) : RandomTerm.Intercept("athlete", athletes)]);
        return MixedModel.Fit(design, new MixedModelOptions { ConfidenceLevel = options.Level, DegreesOfFreedom = options.DegreesOfFreedom }).Select(fit => new BlockModelResult
        {
            Change = fit.Fixed("block").Estimate.WithNotes([.. fit.Notes, .. Notes(tests, options)]),
            Model = fit,
            First = tests.Attendance(tests.First, own => own.First),
            Second = tests.Attendance(tests.Second, own => own.Second),
            Selection = tests.Selection,
        });
    }

    private static IEnumerable<string> Notes(BlockTests tests, BlockModelOptions options)
    {
        if (!options.AthletesDiffer) yield return "All athletes are taken to change alike: the interval is too narrow if they do not.";
        if (options.WithTrend) yield return "The difference is a jump beyond a straight trend; block and week say nearly the same, so it is uncertain.";
        foreach (var note in tests.Notes()) yield return note;
    }
}
