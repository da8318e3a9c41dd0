using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>The findings of one question: what explains the slow-down? First the answer, then what is supported, then what cannot be told and what would settle it.</summary>
public static class ExplanationFindings
{
    /// <summary>Puts the candidates in plain words.</summary>
    public static Findings Of(ExplanationsResult explanations, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(explanations);
        ArgumentNullException.ThrowIfNull(format);
        return new Findings([Answer(explanations), .. Supported(explanations, format), .. Open(explanations)]);
    }

    /// <summary>The answer in one sentence.</summary>
    internal static Finding Answer(ExplanationsResult explanations) => new(explanations.Conclusion) { Estimate = explanations.Slowdown, Source = "Holm 1979", Notes = explanations.Notes };

    /// <summary>What the data fit badly without, and what would settle each.</summary>
    internal static IEnumerable<Finding> Supported(ExplanationsResult explanations, NumberFormat format) =>
        explanations.Supported.Where(candidate => candidate.Cause != ExplanationCause.Noise).Select(candidate => Supported(candidate, format));

    /// <summary>What the data leave open.</summary>
    internal static IEnumerable<Finding> Open(ExplanationsResult explanations) =>
        explanations.Candidates.Where(candidate => candidate.Standing == ExplanationStanding.CannotTell).Select(Open);

    private static Finding Supported(Explanation candidate, NumberFormat format) => new($"Supported: {candidate.Name}{candidate.Accounts.Match(seconds => $"; alone it could account for {format.WithInterval(seconds)}", _ => "")}.")
    {
        Estimate = candidate.PValue,
        Notes = [.. candidate.Supports, .. candidate.Contradicts, candidate.Separates],
    };

    private static Finding Open(Explanation candidate) => new($"Cannot tell: {candidate.Name}.") { Notes = [.. candidate.Contradicts, candidate.Separates] };
}
