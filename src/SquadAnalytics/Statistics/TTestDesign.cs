namespace SquadAnalytics.Statistics;

/// <summary>The kind of t test that a power calculation is about.</summary>
public enum TTestDesign
{
    /// <summary>Paired differences, or one sample; the SD is that of the differences.</summary>
    Paired,

    /// <summary>Two independent groups of equal size; n counts one group.</summary>
    TwoGroups,
}
