using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>One athlete of one group, before and after.</summary>
public sealed record BeforeAndAfter
{
    /// <summary>Makes a row.</summary>
    /// <param name="athleteId">The athlete's id.</param>
    /// <param name="group">The group.</param>
    /// <param name="before">Session total, or mean of several, before.</param>
    /// <param name="after">The same after.</param>
    public BeforeAndAfter(string athleteId, string group, Seconds before, Seconds after)
    {
        AthleteId = Require.Text(athleteId);
        Group = Require.Text(group);
        Before = before;
        After = after;
    }

    /// <summary>The athlete's id.</summary>
    public string AthleteId { get; }

    /// <summary>The group.</summary>
    public string Group { get; }

    /// <summary>Before.</summary>
    public Seconds Before { get; }

    /// <summary>After.</summary>
    public Seconds After { get; }

    /// <summary>After minus before, in seconds: negative = faster.</summary>
    public double ChangeSeconds => After.Value - Before.Value;

    /// <summary>The rows of the reference and of the other group.</summary>
    /// <exception cref="ArgumentException">There are not two groups, none is the reference, or an athlete appears twice.</exception>
    internal static (IReadOnlyList<BeforeAndAfter> Reference, IReadOnlyList<BeforeAndAfter> Compared) Split(IReadOnlyList<BeforeAndAfter> athletes, string reference)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        var groups = athletes.Select(row => row.Group).Distinct(StringComparer.Ordinal).ToList();
        if (groups.Count != 2 || !groups.Contains(reference)) throw new ArgumentException($"There must be two groups, one of them '{reference}', but there are: {string.Join(", ", groups)}.", nameof(athletes));
        if (athletes.GroupBy(row => row.AthleteId, StringComparer.Ordinal).FirstOrDefault(own => own.Count() > 1) is { } twice) throw new ArgumentException($"Athlete '{twice.Key}' appears twice.", nameof(athletes));
        return ([.. athletes.Where(row => row.Group == reference)], [.. athletes.Where(row => row.Group != reference)]);
    }
}
