namespace SquadAnalytics.Import;

/// <summary>Which sign separates whole seconds from their decimals.</summary>
public enum DecimalMark
{
    /// <summary>The point only: <c>62.4</c>.</summary>
    Point,

    /// <summary>The comma, and still the point: <c>62,4</c> and <c>62.4</c>.</summary>
    Comma,
}
