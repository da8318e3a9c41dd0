namespace SquadAnalytics.Change;

/// <summary>In how many tests a condition had a value.</summary>
/// <param name="Value">The value in words, or null where it was not written down.</param>
/// <param name="Tests">How many tests.</param>
public sealed record ConditionCount(string? Value, int Tests)
{
    /// <summary>Value and count.</summary>
    public override string ToString() => FormattableString.Invariant($"{Value ?? "not recorded"} ({Tests})");
}
