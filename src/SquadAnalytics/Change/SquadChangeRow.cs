namespace SquadAnalytics.Change;

/// <summary>One athlete in a squad's table of changes.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Change">The change, or why there is none.</param>
/// <param name="AdjustedPValue">p-value adjusted for the number of athletes (Benjamini and Hochberg); null without a change.</param>
/// <param name="IsFlagged">Whether the adjusted p-value is at most the share of false flags accepted.</param>
public sealed record SquadChangeRow(string AthleteId, Answer<AthleteChangeResult> Change, Estimate? AdjustedPValue, bool IsFlagged)
{
    /// <summary>The change and whether it is flagged.</summary>
    public override string ToString() => Change.Match(change => FormattableString.Invariant($"{change}; adjusted p {AdjustedPValue!.Value:0.000}{(IsFlagged ? ", flagged" : "")}"), refusal => $"{AthleteId}: {refusal}");
}
