using SquadAnalytics.Internals;

namespace SquadAnalytics.Standing;

/// <summary>Options of <see cref="Ranks"/>.</summary>
public sealed record RankOptions
{
    private readonly int _draws = 20_000;

    /// <summary>Level of the rank intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Number of random draws; 1 000 or more. Default 20 000.</summary>
    public int Draws
    {
        get => _draws;
        init => _draws = Require.AtLeast(1_000, value, nameof(Draws));
    }

    /// <summary>Seed of the draws.</summary>
    public int Seed { get; init; } = 1;
}
