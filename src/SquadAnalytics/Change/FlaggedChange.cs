namespace SquadAnalytics.Change;

/// <summary>What a flag in a squad's table of changes stands for.</summary>
public enum FlaggedChange
{
    /// <summary>Any change, faster or slower: two-sided p-values against 0.</summary>
    AnyChange,

    /// <summary>Faster by more than the smallest worthwhile change: minimum-effect p-values.</summary>
    FasterThanWorthwhile,
}
