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
}
