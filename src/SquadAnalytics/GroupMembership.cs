namespace SquadAnalytics;

/// <summary>Dated membership of a group within the squad, for example juniors.</summary>
/// <param name="Group">Name of the group.</param>
/// <param name="From">First day of membership.</param>
/// <param name="To">Last day, or null while it lasts.</param>
public sealed record GroupMembership(string Group, DateOnly From, DateOnly? To = null)
{
    /// <summary>Whether the membership covers a date.</summary>
    public bool Covers(DateOnly date) => date >= From && (To is null || date <= To);
}
