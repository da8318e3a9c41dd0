namespace SquadAnalytics.Change;

/// <summary>How many came in one block.</summary>
/// <param name="Block">The block.</param>
/// <param name="Athletes">Athletes with an eligible test.</param>
/// <param name="Tests">Eligible tests.</param>
/// <param name="FewestTests">Fewest tests of an athlete who came.</param>
/// <param name="MostTests">Most tests of an athlete.</param>
public sealed record BlockAttendance(TrainingBlock Block, int Athletes, int Tests, int FewestTests, int MostTests)
{
    /// <summary>Block, athletes and tests.</summary>
    public override string ToString() => FormattableString.Invariant($"{Block}: {Tests} tests of {Athletes} athletes ({FewestTests} to {MostTests} each)");
}
