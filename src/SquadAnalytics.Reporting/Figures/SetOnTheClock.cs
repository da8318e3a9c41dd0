namespace SquadAnalytics.Reporting.Figures;

/// <summary>One set on its piece of the rolling clock.</summary>
/// <param name="Set">Number of the set, from 1.</param>
/// <param name="Late">How long after the start signal it was started; 0 s where the start was kept.</param>
/// <param name="Work">Its work time.</param>
/// <param name="Rest">Rest until the next start signal, 0 s where it was missed; null after the last set.</param>
public sealed record SetOnTheClock(int Set, Seconds Late, Seconds Work, Seconds? Rest);
