using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="StationShares"/>.</summary>
public sealed record StationSharesOptions
{
    private readonly Seconds _tolerance = new(0.5);

    /// <summary>The set b: sets 1 to b are early, the others late.</summary>
    public required int AfterSet { get; init; }

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();

    /// <summary>By how much the splits of a set may exceed its time before the session counts as a data problem; above 0. Default 0.5 s.</summary>
    public Seconds Tolerance
    {
        get => _tolerance;
        init
        {
            Require.Positive(value.Value, nameof(Tolerance));
            _tolerance = value;
        }
    }
}
