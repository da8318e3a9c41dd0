namespace SquadAnalytics.Sets;

/// <summary>How the set after which an athlete slows was chosen.</summary>
public enum BreakChoice
{
    /// <summary>Named before looking at the data: the t intervals mean what they say.</summary>
    NamedInAdvance,

    /// <summary>Found by trying every set: the p-values count the search, the intervals do not.</summary>
    FoundBySearch,
}
