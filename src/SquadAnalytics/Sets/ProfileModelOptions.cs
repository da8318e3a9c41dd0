using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="ProfileModel"/>.</summary>
public sealed record ProfileModelOptions
{
    /// <summary>Makes the options.</summary>
    /// <param name="afterSet">The set b after which athletes are said to slow, named before looking at the data.</param>
    public ProfileModelOptions(int afterSet) => AfterSet = Internals.Require.AtLeast(1, afterSet);

    /// <summary>The set b, named in advance.</summary>
    public int AfterSet { get; }

    /// <summary>Degrees of freedom of the contrasts; Satterthwaite's by default.</summary>
    public FixedEffectDegreesOfFreedom DegreesOfFreedom { get; init; } = FixedEffectDegreesOfFreedom.Satterthwaite;

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
