using SquadAnalytics.Internals;
using SquadAnalytics.Load;

namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="Explanations"/>.</summary>
public sealed record ExplanationsOptions
{
    private readonly Percent _matters = new(1);

    /// <summary>The set b after which the athlete is said to slow, named before looking at the data; null to search for it.</summary>
    public int? AfterSet { get; init; }

    /// <summary>What was written down about days; those of other athletes are passed over. Empty where nothing was.</summary>
    public IReadOnlyList<DayContext> Days { get; init; } = [];

    /// <summary>The one circumstance, with its lag, that is compared with the slow-down.</summary>
    public Circumstance Circumstance { get; init; }

    /// <summary>The smallest slow-down from early to late sets that is worth explaining, in percent of a set's time; above 0. Default 1 %.</summary>
    public Percent Matters
    {
        get => _matters;
        init
        {
            Require.Positive(value.Value, nameof(Matters));
            _matters = value;
        }
    }

    /// <summary>Level of the intervals; 90 % by default, so that the whole table names a wrong cause in at most 5 %.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();

    /// <summary>Seed of the random sign flips of a search over more than 12 sessions.</summary>
    public int Seed { get; init; } = 1;
}
