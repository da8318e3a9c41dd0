namespace SquadAnalytics.Statistics;

/// <summary>The best cuts of a series into segments of constant mean, for each number of breaks.</summary>
/// <param name="Models">The best model with no break, one break, two, ...</param>
/// <param name="Selected">The one of smallest BIC.</param>
/// <param name="SmallestSegment">The smallest segment that was allowed, in observations.</param>
public sealed record MeanShiftFit(IReadOnlyList<MeanShiftModel> Models, MeanShiftModel Selected, int SmallestSegment)
{
    /// <summary>The selected model.</summary>
    public override string ToString() => Selected.ToString();
}
