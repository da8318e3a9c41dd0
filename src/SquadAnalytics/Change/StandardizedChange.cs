namespace SquadAnalytics.Change;

/// <summary>A mean change in units of a named standard deviation.</summary>
/// <param name="Standardizer">Which standard deviation.</param>
/// <param name="StandardDeviation">That standard deviation.</param>
/// <param name="D">Mean change over it.</param>
/// <param name="G">D times Hedges's factor 1 - 3/(4 df - 1), df = athletes - 1.</param>
public sealed record StandardizedChange(string Standardizer, Seconds StandardDeviation, double D, double G)
{
    /// <summary>The size in words, which belongs to this standard deviation only.</summary>
    public EffectSize Size => EffectSizes.Of(G);

    /// <summary>g, standardiser and size.</summary>
    public override string ToString() => FormattableString.Invariant($"g {G:0.00} in {Standardizer} ({Size.Words()})");
}
