namespace SquadAnalytics.Statistics;

/// <summary>One fixed effect of a mixed model.</summary>
/// <param name="Name">Name of its column.</param>
/// <param name="Estimate">The coefficient, with the p-value of the hypothesis that it is 0.</param>
public sealed record FixedEffect(string Name, Estimate Estimate)
{
    /// <summary>Name and estimate.</summary>
    public override string ToString() => $"{Name}: {Estimate}";
}
