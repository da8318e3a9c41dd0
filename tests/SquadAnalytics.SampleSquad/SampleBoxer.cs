namespace SquadAnalytics.SampleSquad;

/// <summary>An invented boxer as the scenario names them; abilities are drawn by the generator.</summary>
/// <param name="Name">The display name.</param>
/// <param name="Code">The short code.</param>
/// <param name="Sex">Sex.</param>
/// <param name="BirthYear">Year of birth.</param>
public sealed record SampleBoxer(string Name, string Code, Sex Sex, int BirthYear)
{
    /// <summary>Whether the boxer is in the juniors' group: scaled protocol, more set noise, no bouts, shown by code.</summary>
    public bool Junior { get; init; }

    /// <summary>What is built into the boxer's times, or null for nothing in particular.</summary>
    public Story? Story { get; init; }

    /// <summary>First week in the squad, from 1.</summary>
    public int FromWeek { get; init; } = 1;

    /// <summary>Last week in the squad, or null where the boxer stays.</summary>
    public int? ToWeek { get; init; }

    /// <summary>The week with a knock to the head on its Saturday, or null.</summary>
    public int? HeadKnockWeek { get; init; }

    /// <summary>Weeks from that knock until a clinician clears the boxer, on a Monday.</summary>
    public int WeeksUntilCleared { get; init; } = 3;
}
