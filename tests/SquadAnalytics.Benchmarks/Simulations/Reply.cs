namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>The answer of one run to one question.</summary>
/// <param name="Yes">The answer; null where the analysis refuses.</param>
/// <param name="Stated">The confidence, 0 to 1, that the answer itself states, where it cannot hit the level that was asked for.</param>
internal readonly record struct Reply(bool? Yes, double? Stated = null)
{
    /// <summary>An answer that states no confidence of its own.</summary>
    public static implicit operator Reply(bool? yes) => new(yes);

    /// <summary>An answer that states no confidence of its own.</summary>
    public static implicit operator Reply(bool yes) => new(yes);
}
