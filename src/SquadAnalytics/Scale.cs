namespace SquadAnalytics;

/// <summary>The scale on which times are analysed.</summary>
public enum Scale
{
    /// <summary>Seconds: the default within one athlete.</summary>
    Seconds,

    /// <summary>Natural logarithms, reported as percent: the default where athletes are pooled, because bigger times tend to carry bigger error.</summary>
    Log,
}
