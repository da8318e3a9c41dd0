using System.Globalization;

namespace SquadAnalytics.Change;

/// <summary>The noise of one test against the smallest worthwhile change.</summary>
public sealed record SignalAndNoiseResult
{
    /// <summary>Typical error over smallest worthwhile change, a plain ratio.</summary>
    public required Estimate Ratio { get; init; }

    /// <summary>The word for it.</summary>
    public required NoiseWord Word { get; init; }

    /// <summary>How many tests must be averaged to bring the noise of their mean down to the smallest worthwhile change.</summary>
    public required Estimate TestsNeeded { get; init; }

    /// <summary>Ratio, word and tests needed.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Noise / smallest worthwhile change {Ratio.Value:0.00}: {Words(Word)}; {TestsNeeded.Value:0} tests needed");

    private static string Words(NoiseWord word) => word switch
    {
        NoiseWord.Good => "good",
        NoiseWord.UsableWithRepeatedTests => "usable with repeated tests",
        _ => "too noisy for single-athlete decisions",
    };
}
