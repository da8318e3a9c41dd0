using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>Options of the simulated <see cref="NoiseFloor"/>.</summary>
public sealed record NoiseFloorOptions
{
    private readonly int _runs = 20_000;

    /// <summary>Number of simulated sessions; 1 000 or more. Default 20 000.</summary>
    public int Runs
    {
        get => _runs;
        init => _runs = Require.AtLeast(1_000, value, nameof(Runs));
    }

    /// <summary>Seed of the simulation.</summary>
    public int Seed { get; init; } = 1;
}
