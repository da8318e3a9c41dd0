namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>What a rate should be.</summary>
internal enum Promise
{
    /// <summary>Nothing is promised: the rate is told.</summary>
    None,

    /// <summary>The nominal rate.</summary>
    Exactly,

    /// <summary>The nominal rate or less.</summary>
    AtMost,

    /// <summary>The nominal rate or more.</summary>
    AtLeast,

    /// <summary>The mean of the confidences that the answers state, each for itself.</summary>
    AsStated,
}
