namespace SquadAnalytics.Change;

/// <summary>The size of a standardised difference.</summary>
public enum EffectSize
{
    /// <summary>Below 0.2.</summary>
    Trivial,

    /// <summary>From 0.2.</summary>
    Small,

    /// <summary>From 0.6.</summary>
    Moderate,

    /// <summary>From 1.2.</summary>
    Large,

    /// <summary>From 2.0.</summary>
    VeryLarge,

    /// <summary>From 4.0.</summary>
    ExtremelyLarge,
}
