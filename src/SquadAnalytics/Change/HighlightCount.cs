using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>How many highlights chance alone would give when many athletes are looked at for many weeks.</summary>
public static class HighlightCount
{
    /// <summary>Expected false highlights α · athletes · weeks, to stand beside any single one.</summary>
    /// <remarks>α k w, k athletes, w weeks; a count without a unit. Assumes that nothing changed for anybody; the questions need not be independent, for it is an expected number. Source: counting.</remarks>
    /// <param name="athletes">Number of athletes looked at; 1 or more.</param>
    /// <param name="weeks">Number of weeks looked at; 1 or more.</param>
    /// <param name="level">Level of the intervals that were looked at; α is 1 - level.</param>
    public static Estimate Expected(int athletes, int weeks, ConfidenceLevel level = default)
    {
        var looked = Require.AtLeast(1, athletes) * Require.AtLeast(1, weeks);
        return new Estimate(level.Alpha * looked, Unit.None, looked, FormattableString.Invariant($"{level.Alpha:0.##} of {athletes} athletes x {weeks} weeks looked at"));
    }
}
