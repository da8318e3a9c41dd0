using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="BlockCircumstances"/>.</summary>
public sealed record BlockCircumstancesOptions
{
    private readonly int? _comparisonsTried;

    /// <summary>Health notes, which are kept apart from the squad; only athletes are counted. Null where they are not to be looked at.</summary>
    public IReadOnlyList<HealthNote>? HealthNotes { get; init; }

    /// <summary>How many comparisons were tried on these data, this one included; 1 or more, null where nobody counted.</summary>
    public int? ComparisonsTried
    {
        get => _comparisonsTried;
        init => _comparisonsTried = value is { } count ? Require.AtLeast(1, count, nameof(ComparisonsTried)) : null;
    }

    /// <summary>Which sessions the comparison uses.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
