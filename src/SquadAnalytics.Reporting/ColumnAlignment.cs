namespace SquadAnalytics.Reporting;

/// <summary>On which side the cells of a column line up.</summary>
public enum ColumnAlignment
{
    /// <summary>Left: words.</summary>
    Left,

    /// <summary>Right: figures, so that their decimals line up.</summary>
    Right,
}
