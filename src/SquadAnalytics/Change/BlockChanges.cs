using SquadAnalytics.Reliability;

namespace SquadAnalytics.Change;

/// <summary>For whom did two blocks differ? Each athlete's own difference against the noise of the test.</summary>
public static class BlockChanges
{
    /// <summary>Compares each athlete's tests of the second block with those of the first.</summary>
    /// <remarks>
    /// Each row as <see cref="AthleteChange.Between"/>: D = mean of block 2 - mean of block 1, SE = TE √(1/n1 + 1/n2), n1 and n2 the tests in each; a row refuses with <see cref="Refusal.TooFewSessions"/> without a test in both. p-values adjusted over the athletes as in <see cref="SquadChanges"/>
    /// (Benjamini and Hochberg 1995, from memory). A row says that this athlete's level differed between the blocks, not that the block did it; nobody is labelled as one who responds.
    /// Assumes independent athletes and normal changes.
    /// </remarks>
    /// <param name="sessions">All sessions of the squad, in any order.</param>
    /// <param name="first">The earlier block.</param>
    /// <param name="second">The later block; it begins after the first ends.</param>
    /// <param name="typicalError">The noise of one session total.</param>
    /// <param name="worthwhile">The smallest worthwhile change S.</param>
    /// <param name="options">Flags, level and selection; week and baseline do not apply. Null for the defaults.</param>
    /// <returns>One row per athlete with a test in either block, <see cref="SquadChangesResult.WeekFrom"/> being the first day of the second block; or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The blocks overlap or are in the wrong order.</exception>
    public static Answer<SquadChangesResult> Fit(
        IReadOnlyList<Session> sessions, TrainingBlock first, TrainingBlock second, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, SquadChangesOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        ArgumentNullException.ThrowIfNull(worthwhile);
        options ??= new SquadChangesOptions();
        return BlockTests.Of(sessions, first, second, options.Change.Selection).Select(tests => SquadChanges.Of(
            [.. tests.Athletes.Select(own => new SquadChangeRow(own.AthleteId, Change(own, typicalError, worthwhile, options), null, false))],
            second.From, tests.Selection, options, tests.Notes()));
    }

    private static Answer<AthleteChangeResult> Change(OwnBlockTests own, TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, SquadChangesOptions options)
    {
        if (own.First.Count > 0 && own.Second.Count > 0) return AthleteChange.Between(own.First, own.Second, typicalError, worthwhile, options.Change);
        return new NotEstimable("the difference between the blocks", Refusal.TooFewSessions, "a test in both blocks", own.First.Count == 0 ? "none in the first" : "none in the second");
    }
}
