namespace SquadAnalytics.Change;

/// <summary>The eligible sessions of two blocks, by athlete.</summary>
internal sealed record BlockTests(TrainingBlock First, TrainingBlock Second, SessionSelection Selection, IReadOnlyList<OwnBlockTests> Athletes)
{
    public static Answer<BlockTests> Of(IReadOnlyList<Session> sessions, TrainingBlock first, TrainingBlock second, SelectionOptions options)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (second.From <= first.To)
            throw new ArgumentException(FormattableString.Invariant($"Block '{second}' must begin after block '{first}' ends on {first.To:yyyy-MM-dd}, but begins on {second.From:yyyy-MM-dd}."), nameof(second));
        return SessionSelection.Of(sessions, options).Select(selection => new BlockTests(first, second, selection,
            [.. selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).OrderBy(own => own.Key, StringComparer.Ordinal)
                .Select(own => new OwnBlockTests(own.Key, [.. own.Where(session => Belongs(session, first))], [.. own.Where(session => Belongs(session, second))]))
                .Where(own => own.First.Count + own.Second.Count > 0)]));
    }

    /// <summary>Attendance of one of the blocks.</summary>
    public BlockAttendance Attendance(TrainingBlock block, Func<OwnBlockTests, IReadOnlyList<Session>> tests)
    {
        var counts = Athletes.Select(own => tests(own).Count).Where(count => count > 0).ToList();
        return new BlockAttendance(block, counts.Count, counts.Sum(), counts.DefaultIfEmpty().Min(), counts.DefaultIfEmpty().Max());
    }

    /// <summary>What has to be said with every comparison of blocks.</summary>
    public IEnumerable<string> Notes()
    {
        yield return $"The order of the blocks was not drawn by lot: {Second} came second, so practice, season and growth are part of the difference. Say \"differed by\", not \"improved because of\".";
        if (First.DefinedAfterData || Second.DefinedAfterData) yield return "The dates of a block were chosen after the results were seen.";
        foreach (var note in Selection.Notes) yield return note;
    }

    private static bool Belongs(Session session, TrainingBlock block) => block.Covers(session.Date) && block.Includes(session.AthleteId);
}

/// <summary>One athlete's eligible sessions in two blocks.</summary>
internal sealed record OwnBlockTests(string AthleteId, IReadOnlyList<Session> First, IReadOnlyList<Session> Second)
{
    /// <summary>The athlete as one who is left out for lack of tests.</summary>
    public LeftOutAthlete LeftOut(int needed)
    {
        var reason = First.Count == 0 ? "no eligible test in the first block"
            : Second.Count == 0 ? "no eligible test in the second block"
            : FormattableString.Invariant($"fewer than {needed} eligible tests in a block");
        return new LeftOutAthlete(AthleteId, First.Count, Second.Count, Statistics.Descriptive.Mean([.. First.Concat(Second).Select(session => session.Total.GetOrThrow().Value)]), reason);
    }
}
