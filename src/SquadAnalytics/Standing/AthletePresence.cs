namespace SquadAnalytics.Standing;

/// <summary>One athlete and the test of one week.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Presence">How the athlete stands to the test.</param>
/// <param name="Session">The session of the week, or null without one.</param>
/// <param name="LastComplete">Date of the last complete test before the week, or null where there is none.</param>
/// <param name="Bar">The head knock that bars the athlete, or null.</param>
public sealed record AthletePresence(string AthleteId, Presence Presence, Session? Session, DateOnly? LastComplete, AthleteEvent? Bar)
{
    /// <summary>Athlete and presence.</summary>
    public override string ToString() => $"{AthleteId}: {Presence.Words()}";
}
