using SquadAnalytics.Frames;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Figures of frames in one line.</summary>
public static class FramePlots
{
    /// <summary>Draws one column of a frame against another: <c>evening.Plot("test_date", "total_s", by: "athlete")</c>.</summary>
    /// <param name="frame">The frame, such as the result of a query.</param>
    /// <param name="x">Name of the column across: numbers, dates, or words, which become rows.</param>
    /// <param name="y">Name of the column upwards: numbers.</param>
    /// <param name="by">Name of a column that tells groups apart, or null.</param>
    /// <exception cref="ArgumentException">There is no such column, <paramref name="y"/> does not hold numbers, or no row has both.</exception>
    public static HowDoTheyGoTogether Plot(this Frame frame, string x, string y, string? by = null) => new(frame, x, y, by);
}
