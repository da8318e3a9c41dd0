namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="FatigueIndices"/>.</summary>
public sealed record FatigueOptions
{
    /// <summary>What even pacing alone would show at the athlete's own set noise; null where no set noise is known.</summary>
    public NoiseFloor? NoiseFloor { get; init; }
}
