using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="StartingTooFast"/>.</summary>
public sealed record StartingTooFastOptions
{
    private readonly int _afterSet = 1;

    /// <summary>The set b after which the later sets begin; 1 or more. Default 1.</summary>
    public int AfterSet
    {
        get => _afterSet;
        init => _afterSet = Require.AtLeast(1, value, nameof(AfterSet));
    }

    /// <summary>Level of the interval; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
