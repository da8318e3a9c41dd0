namespace SquadAnalytics.Load;

/// <summary>How session totals differ with one circumstance.</summary>
/// <param name="Circumstance">The circumstance.</param>
/// <param name="Within">Seconds per unit when an athlete's own test differs from the athlete's usual; a refusal where nobody's tests differ.</param>
/// <param name="Between">Seconds per unit between athletes whose means differ: who they are, not what changed; a refusal where all means are alike.</param>
/// <param name="TestsWithout">Eligible tests for which it is not written down.</param>
public sealed record CovariateEffect(Circumstance Circumstance, Answer<Estimate> Within, Answer<Estimate> Between, int TestsWithout)
{
    /// <summary>The circumstance and its effect within athletes.</summary>
    public override string ToString() => $"{Circumstance.Words()}: {Within} within athletes";
}
