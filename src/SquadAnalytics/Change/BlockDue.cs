namespace SquadAnalytics.Change;

/// <summary>How many of the tests that were due in a block were done.</summary>
/// <param name="Due">Weeks in which the squad tested, for every athlete of the block who was in the squad and not barred after a head knock.</param>
/// <param name="Done">Those of them in which the athlete started a test.</param>
public sealed record BlockDue(int Due, int Done)
{
    /// <summary>Share done, or null where nothing was due.</summary>
    public Percent? Share => Due == 0 ? null : new Percent(100.0 * Done / Due);

    /// <summary>Done of due.</summary>
    public override string ToString() => FormattableString.Invariant($"{Done} of {Due}");
}
