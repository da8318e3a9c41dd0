using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>A member of the squad.</summary>
public sealed record Athlete
{
    /// <summary>The group whose members are minors: shown by code, not ranked by default.</summary>
    public const string Juniors = "juniors";

    /// <summary>Makes an athlete.</summary>
    /// <param name="id">An opaque id, unique in the logbook.</param>
    /// <param name="displayName">The name as the coach writes it.</param>
    /// <param name="code">A short code for reports that must not show names.</param>
    public Athlete(string id, string displayName, string code)
    {
        Id = Require.Text(id);
        DisplayName = Require.Text(displayName);
        Code = Require.Text(code);
    }

    /// <summary>An opaque id, unique in the logbook.</summary>
    public string Id { get; }

    /// <summary>The name as the coach writes it.</summary>
    public string DisplayName { get; init; }

    /// <summary>A short code for reports that must not show names.</summary>
    public string Code { get; init; }

    /// <summary>Other spellings met on clipboards and confirmed by a person.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>First day in the squad, or null.</summary>
    public DateOnly? Joined { get; init; }

    /// <summary>Last day in the squad, or null.</summary>
    public DateOnly? Left { get; init; }

    /// <summary>Year of birth, or null.</summary>
    public int? BirthYear { get; init; }

    /// <summary>Sex as entered.</summary>
    public Sex Sex { get; init; }

    /// <summary>Dated memberships of groups.</summary>
    public IReadOnlyList<GroupMembership> Groups { get; init; } = [];

    /// <summary>Dated consents.</summary>
    public IReadOnlyList<Consent> Consents { get; init; } = [];

    /// <summary>Whether the athlete is in the juniors' group on a date.</summary>
    public bool IsJuniorOn(DateOnly date) => Groups.Any(group => string.Equals(group.Group, Juniors, StringComparison.OrdinalIgnoreCase) && group.Covers(date));

    /// <summary>How the athlete is labelled in anything shown or shared on a date: juniors by code, others by name.</summary>
    public string LabelOn(DateOnly date) => IsJuniorOn(date) ? Code : DisplayName;

    /// <summary>The code.</summary>
    public override string ToString() => Code;
}
