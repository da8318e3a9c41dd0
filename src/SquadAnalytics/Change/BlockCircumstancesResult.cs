namespace SquadAnalytics.Change;

/// <summary>What else differed between two training blocks, counted from the logbook.</summary>
public sealed record BlockCircumstancesResult
{
    /// <summary>Attendance in the earlier block.</summary>
    public required BlockAttendance First { get; init; }

    /// <summary>Attendance in the later block, which came second.</summary>
    public required BlockAttendance Second { get; init; }

    /// <summary>Tests due and done in the earlier block.</summary>
    public required BlockDue FirstDue { get; init; }

    /// <summary>Tests due and done in the later block.</summary>
    public required BlockDue SecondDue { get; init; }

    /// <summary>Weeks from the middle of the first block to that of the second.</summary>
    public required double WeeksBetween { get; init; }

    /// <summary>Juniors among the athletes with an eligible test in both blocks, on the first day of the second: growth works for them.</summary>
    public required int Juniors { get; init; }

    /// <summary>Whether the dates of a block were chosen after the results were seen.</summary>
    public required bool DefinedAfterData { get; init; }

    /// <summary>Athletes with eligible tests in one block only, with tests and mean total.</summary>
    public required IReadOnlyList<LeftOutAthlete> InOneBlockOnly { get; init; }

    /// <summary>Timer, place, circuit, start interval and written step in both blocks, over all tests that these athletes started.</summary>
    public required IReadOnlyList<BlockCondition> Conditions { get; init; }

    /// <summary>Eligible tests after sparring on the same day.</summary>
    public required BlockCount AfterSparring { get; init; }

    /// <summary>Eligible tests for which it was not written down whether there was sparring before.</summary>
    public required BlockCount SparringUnknown { get; init; }

    /// <summary>Eligible tests in the week up to a weigh-in of the athlete, weigh-in day included.</summary>
    public required BlockCount MakingWeight { get; init; }

    /// <summary>Eligible tests at most three days before or after a bout of the athlete.</summary>
    public required BlockCount NearABout { get; init; }

    /// <summary>Athletes with an illness, injury or head knock noted in a block, or null where health notes were not looked at. A count only.</summary>
    public required BlockCount? AthletesWithHealthNotes { get; init; }

    /// <summary>How many comparisons were tried on these data, this one included, or null where nobody counted.</summary>
    public required int? ComparisonsTried { get; init; }

    /// <summary>How many pairs of blocks in the logbook could be compared, one after the other.</summary>
    public required int PairsOfBlocks { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>Blocks and attendance.</summary>
    public override string ToString() => $"{First.Block} (done {FirstDue}) and {Second.Block} (done {SecondDue}); changed: {string.Join(", ", Conditions.Where(condition => condition.IsChanged).Select(condition => condition.Kind.Words()).DefaultIfEmpty("nothing"))}";
}
