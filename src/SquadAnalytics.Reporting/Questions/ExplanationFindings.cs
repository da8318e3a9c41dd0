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
        return new Findings(
        [
            new Finding(explanations.Conclusion) { Estimate = explanations.Slowdown, Source = "Holm 1979", Notes = explanations.Notes },
            .. explanations.Supported.Where(candidate => candidate.Cause != ExplanationCause.Noise).Select(candidate => Supported(candidate, format)),
            .. explanations.Candidates.Where(candidate => candidate.Standing == ExplanationStanding.CannotTell).Select(Open),
        ]);
    }

    private static Finding Supported(Explanation candidate, NumberFormat format) => new($"Supported: {candidate.Name}{candidate.Accounts.Match(seconds => $"; alone it could account for {format.WithInterval(seconds)}", _ => "")}.")
    {
        Estimate = candidate.PValue,
        Notes = [.. candidate.Supports, .. candidate.Contradicts, candidate.Separates],
    };

    private static Finding Open(Explanation candidate) => new($"Cannot tell: {candidate.Name}.") { Notes = [.. candidate.Contradicts, candidate.Separates] };
}
