namespace SquadAnalytics.Statistics;

/// <summary>What to do when a fit ends on the boundary: a random effect without variance, or a correlation of ±1.</summary>
public enum SingularFits
{
    /// <summary>Refit without the correlation, then without the random slopes that have no variance, and say so in the notes. The default.</summary>
    Simplify,

    /// <summary>Keep the model as asked for; the result says that it is singular.</summary>
    Keep,
}
