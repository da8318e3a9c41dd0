using SquadAnalytics.Internals;

namespace SquadAnalytics.Standing;

/// <summary>Options of <see cref="Categories"/>.</summary>
public sealed record CategoryOptions
{
    private readonly int _bodyMassDays = 14;

    /// <summary>Whose tables are used; null where the logbook holds those of one federation only.</summary>
    public string? Federation { get; init; }

    /// <summary>How many days before the test a body mass may be written down to count for it; 0 or more, 14 by default.</summary>
    public int BodyMassDays
    {
        get => _bodyMassDays;
        init => _bodyMassDays = Require.AtLeast(0, value, nameof(BodyMassDays));
    }
}
