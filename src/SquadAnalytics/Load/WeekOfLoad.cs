namespace SquadAnalytics.Load;

/// <summary>One week of a season, with its load or the reason why there is none.</summary>
/// <param name="From">Its Monday.</param>
/// <param name="Load">The load, or a refusal where a day is not confirmed.</param>
public sealed record WeekOfLoad(DateOnly From, Answer<WeeklyLoadResult> Load)
{
    /// <summary>The week.</summary>
    public override string ToString() => FormattableString.Invariant($"{From:yyyy-MM-dd}: {Load}");
}
