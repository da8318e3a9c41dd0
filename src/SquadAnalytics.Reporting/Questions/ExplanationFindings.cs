using System.Globalization;
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
        return new Findings([Answer(explanations, format), .. Supported(explanations, format), .. Open(explanations)]);
    }

    /// <summary>The answer in one sentence.</summary>
    /// <param name="explanations">The candidates.</param>
    /// <param name="format">How numbers are written.</param>
    /// <param name="where">At which station, in a few words; null where that is not known.</param>
    internal static Finding Answer(ExplanationsResult explanations, NumberFormat format, string? where = null) => new($"{InShort(explanations, format, where)}{explanations.Conclusion}")
    {
        Estimate = explanations.Slowdown,
        Method = "slow-down: one-sample t over sessions; candidates: tested together, each with its adjusted p-value in the table",
        Source = "Holm 1979",
        Notes = explanations.Notes,
    };

    /// <summary>How much of the slow-down is a jump and how much a drift, each with the other held equal: both parts add up to the slow-down.</summary>
    private static string InShort(ExplanationsResult explanations, NumberFormat format, string? where)
    {
        var (drift, jump) = (explanations[ExplanationCause.SteadyDrift], explanations[ExplanationCause.LateBreak]);
        if (drift.Standing != ExplanationStanding.Supported && jump.Standing != ExplanationStanding.Supported || !jump.Effect.TryGet(out var step)) return "";
        var rest = explanations.Slowdown.Value - step.Value;
        var parts = jump.Standing != ExplanationStanding.Supported ? "a gradual drift would do, a jump is not shown"
            : rest > 0 ? $"about {About(step.Value)} of it a jump after set {explanations.AfterSet.ToString(CultureInfo.InvariantCulture)} and about {About(rest)} a gradual drift"
            : $"a jump after set {explanations.AfterSet.ToString(CultureInfo.InvariantCulture)}, with no drift besides";
        var first = (explanations.AfterSet + 1).ToString(CultureInfo.InvariantCulture);
        return $"Slower from set {first} by {format.Value(explanations.Slowdown)} a set: {parts}{(where is null ? "" : $"; {where}")}. Why (a tired muscle, technique, counting) a stopwatch cannot say. ";
    }

    private static string About(double seconds) => $"{NumberFormat.Fixed(seconds, 1)} s";

    /// <summary>What the data fit badly without, and what would settle each.</summary>
    internal static IEnumerable<Finding> Supported(ExplanationsResult explanations, NumberFormat format) =>
        explanations.Supported.Where(candidate => candidate.Cause != ExplanationCause.Noise).Select(candidate => Supported(candidate, format));

    /// <summary>What the data leave open.</summary>
    internal static IEnumerable<Finding> Open(ExplanationsResult explanations) =>
        explanations.Candidates.Where(candidate => candidate.Standing == ExplanationStanding.CannotTell).Select(Open);

    private static Finding Supported(Explanation candidate, NumberFormat format) => new($"Supported: {candidate.Name}{candidate.Accounts.Match(seconds => $"; at most, if it were the only cause, {format.WithInterval(seconds)}", _ => "")}.")
    {
        Estimate = candidate.PValue,
        Notes = [.. candidate.Supports, .. candidate.Contradicts, candidate.Separates],
    };

    private static Finding Open(Explanation candidate) => new($"Cannot tell: {candidate.Name}.") { Notes = [.. candidate.Contradicts, candidate.Separates] };
}
