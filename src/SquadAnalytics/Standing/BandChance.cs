namespace SquadAnalytics.Standing;

/// <summary>The probability that the true total lies in a band.</summary>
/// <param name="Band">The band; null outside the banded range.</param>
/// <param name="Name">The band's name, or <c>faster than the banded range</c> or <c>slower than the banded range</c>.</param>
/// <param name="Chance">The probability.</param>
public sealed record BandChance(PerformanceBand? Band, string Name, Estimate Chance)
{
    /// <summary>Name and probability.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}: {Chance.Value:0.00}");
}
