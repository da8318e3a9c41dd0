namespace SquadAnalytics.Reliability;

/// <summary>What makes sessions of different athletes the same test of the squad.</summary>
public enum TestGrouping
{
    /// <summary>The same week, Monday to Sunday: a test made up later in the week still counts (default).</summary>
    Week,

    /// <summary>The same date.</summary>
    Date,

    /// <summary>The same number in each athlete's own series: first test, second test.</summary>
    Ordinal,
}
