namespace SquadAnalytics.Standing;

/// <summary>One athlete's place in a squad, with its uncertainty.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Level">The estimate that is ranked, with its standard error; smaller = faster.</param>
/// <param name="ExpectedRank">Expected rank; 1 is the fastest.</param>
/// <param name="From">Best rank of the interval.</param>
/// <param name="To">Worst rank of the interval.</param>
/// <param name="Confidence">Probability, 0 to 1, that the rank lies in the interval: at least the level that was asked for, since ranks are whole numbers.</param>
public sealed record RankedAthlete(string AthleteId, Estimate Level, Estimate ExpectedRank, int From, int To, double Confidence)
{
    /// <summary>The ranks as they may be printed: never a bare position.</summary>
    public override string ToString() => From == To ? FormattableString.Invariant($"{AthleteId}: rank {From}") : FormattableString.Invariant($"{AthleteId}: ranks {From} to {To}");
}
