namespace SquadAnalytics.Standing;

/// <summary>What may be said of the band of a test.</summary>
public enum BandStanding
{
    /// <summary>In the same band as the test before.</summary>
    Unchanged,

    /// <summary>A new band: probable enough, or reached twice in a row.</summary>
    Changed,

    /// <summary>On the line: the total lies in another band than before, but not clearly.</summary>
    OnTheLine,

    /// <summary>There is no earlier test to compare with.</summary>
    First,
}
