namespace SquadAnalytics.Reporting.Figures;

/// <summary>The level of the intervals in a figure, in words.</summary>
internal static class LevelText
{
    public static string Of(IEnumerable<LabelledEstimate> rows) =>
        Of(rows.Select(row => row.Estimate).Where(answer => answer.IsEstimated).Select(answer => answer.GetOrThrow()));

    public static string Of(IEnumerable<Estimate> estimates)
    {
        var levels = estimates.Select(estimate => estimate.ConfidenceLevel).OfType<ConfidenceLevel>().Distinct().ToList();
        return levels.Count switch
        {
            0 => "no interval",
            1 => $"{levels[0]} interval",
            _ => throw new ArgumentException($"Intervals of several levels ({string.Join(", ", levels)}) must not be mixed in one figure.", nameof(estimates)),
        };
    }
}
