namespace SquadAnalytics.Load;

/// <summary>How the standard deviation of the seven daily loads is taken; authors differ.</summary>
public enum LoadDeviation
{
    /// <summary>Divided by days - 1; the default.</summary>
    Sample,

    /// <summary>Divided by days.</summary>
    Population,
}
