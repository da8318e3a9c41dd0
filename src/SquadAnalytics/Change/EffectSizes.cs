using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>Words for standardised differences.</summary>
public static class EffectSizes
{
    /// <summary>The size of a difference, whatever its sign: below 0.2 trivial, 0.2 small, 0.6 moderate, 1.2 large, 2.0 very large, 4.0 extremely large.</summary>
    /// <remarks>Hopkins et al. 2009, Med Sci Sports Exerc 41:3-13; thresholds from memory. The same change can be trivial on one standard deviation and large on another.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The difference is not finite.</exception>
    public static EffectSize Of(double difference) => Math.Abs(Require.Finite(difference)) switch
    {
        < 0.2 => EffectSize.Trivial,
        < 0.6 => EffectSize.Small,
        < 1.2 => EffectSize.Moderate,
        < 2.0 => EffectSize.Large,
        < 4.0 => EffectSize.VeryLarge,
        _ => EffectSize.ExtremelyLarge,
    };

    /// <summary>The size as it stands in a sentence.</summary>
    public static string Words(this EffectSize size) => size switch
    {
        EffectSize.Trivial => "trivial",
        EffectSize.Small => "small",
        EffectSize.Moderate => "moderate",
        EffectSize.Large => "large",
        EffectSize.VeryLarge => "very large",
        EffectSize.ExtremelyLarge => "extremely large",
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "Not a size of an effect."),
    };
}
