namespace SquadAnalytics.Statistics;

/// <summary>How p-values and intervals of all pairs of groups allow for the number of pairs.</summary>
public enum PairwiseAdjustment
{
    /// <summary>Not at all: each pair as if it were the only one.</summary>
    None,

    /// <summary>Tukey's studentised range (Tukey-Kramer with unequal groups).</summary>
    Tukey,

    /// <summary>Bonferroni p-values and intervals.</summary>
    Bonferroni,

    /// <summary>Holm p-values; intervals by Bonferroni, as Holm has none of its own.</summary>
    Holm,

    /// <summary>Benjamini-Hochberg p-values; intervals unadjusted, as the method has none of its own.</summary>
    BenjaminiHochberg,
}
