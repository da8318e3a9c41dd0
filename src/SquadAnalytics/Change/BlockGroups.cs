using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Two groups that trained side by side: each member's level before and at the end of the group's block.</summary>
public sealed record BlockGroups
{
    private const string Measure = "levels before and after";

    private BlockGroups(IReadOnlyList<BeforeAndAfter> rows, IReadOnlyList<LeftOutAthlete> leftOut, SessionSelection selection) => (Rows, LeftOut, Selection) = (rows, leftOut, selection);

    /// <summary>One row per member with enough tests before and in the block; the group is the block's name.</summary>
    public IReadOnlyList<BeforeAndAfter> Rows { get; }

    /// <summary>Members who are left out, and why; first tests are those before the block, second those in it.</summary>
    public IReadOnlyList<LeftOutAthlete> LeftOut { get; }

    /// <summary>What was used and left out.</summary>
    public SessionSelection Selection { get; }

    /// <summary>Takes the means of each member's last tests before the block and of the last tests in it.</summary>
    /// <remarks>In seconds; assumes nothing, the rows describe. Source: Vickers and Altman 2001, BMJ 323:1123-1124, for the comparison that these rows are made for; how many tests are averaged is a setting.</remarks>
    /// <param name="sessions">All sessions of the squad, in any order.</param>
    /// <param name="pair">Two blocks side by side.</param>
    /// <param name="options">Tests that are averaged on each side (where a member has more, the last ones) and needed at least once; selection. Null for the defaults.</param>
    /// <returns>The rows, or <see cref="Refusal.NotComparable"/> where the blocks follow each other, <see cref="Refusal.TooFewAthletes"/> with nobody in a group, <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<BlockGroups> Of(IReadOnlyList<Session> sessions, BlockPair pair, BlockComparisonOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(pair);
        options ??= new BlockComparisonOptions();
        return pair.ForTwoGroups((first, second) => SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, [first, second], options), refusal => refusal));
    }

    /// <summary>Groups and counts.</summary>
    public override string ToString() => string.Join("; ", Rows.GroupBy(row => row.Group, StringComparer.Ordinal).Select(group => FormattableString.Invariant($"{group.Key}: {group.Count()} athletes")));

    private static Answer<BlockGroups> Of(SessionSelection selection, IReadOnlyList<TrainingBlock> blocks, BlockComparisonOptions options)
    {
        var rows = new List<BeforeAndAfter>();
        var leftOut = new List<LeftOutAthlete>();
        var own = selection.Sessions.ToLookup(session => session.AthleteId, StringComparer.Ordinal);
        foreach (var block in blocks)
        {
            foreach (var member in block.Members.Where(member => own[member].Any()).Order(StringComparer.Ordinal))
            {
                IReadOnlyList<Session> before = [.. own[member].Where(session => session.Date < block.From).TakeLast(options.TestsPerBlock)];
                IReadOnlyList<Session> within = [.. own[member].Where(session => block.Covers(session.Date)).TakeLast(options.TestsPerBlock)];
                if (before.Count == options.TestsPerBlock && within.Count == options.TestsPerBlock) rows.Add(new BeforeAndAfter(member, block.Name, new Seconds(Mean(before)), new Seconds(Mean(within))));
                else leftOut.Add(new LeftOutAthlete(member, before.Count, within.Count, Mean([.. own[member]]), before.Count < options.TestsPerBlock ? "too few eligible tests before the block" : "too few eligible tests in the block"));
            }
        }

        return rows.Select(row => row.Group).Distinct(StringComparer.Ordinal).Count() < 2
            ? new NotEstimable(Measure, Refusal.TooFewAthletes, "members with tests before and in the block in both groups", "such members in fewer than two groups")
            : new BlockGroups(rows, leftOut, selection);
    }

    private static double Mean(IReadOnlyList<Session> sessions) => Descriptive.Mean([.. sessions.Select(session => session.Total.GetOrThrow().Value)]);
}
