namespace SquadAnalytics.Sets;

/// <summary>Candidate explanations of one athlete's slow-down, side by side.</summary>
public sealed record ExplanationsResult
{
    /// <summary>The set b: sets 1 to b are early, the others late.</summary>
    public required int AfterSet { get; init; }

    /// <summary>Whether b was named in advance or found by searching.</summary>
    public required BreakChoice Choice { get; init; }

    /// <summary>The slow-down to be explained: mean late set minus mean early set over sessions, in seconds.</summary>
    public required Estimate Slowdown { get; init; }

    /// <summary>One-sided p-value of a slow-down above 0, the search charged where b was found.</summary>
    public required Estimate SlowdownPValue { get; init; }

    /// <summary>The smallest slow-down that is worth explaining, in seconds.</summary>
    public required Seconds Matters { get; init; }

    /// <summary>The candidates, one of each <see cref="ExplanationCause"/>, in its order.</summary>
    public required IReadOnlyList<Explanation> Candidates { get; init; }

    /// <summary>How false alarms are held down, and what a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>The candidates that are supported.</summary>
    public IReadOnlyList<Explanation> Supported => [.. Candidates.Where(candidate => candidate.Standing == ExplanationStanding.Supported)];

    /// <summary>Whether the truth cannot be told: no candidate is supported. Where noise alone is supported there is nothing to explain, which is an answer.</summary>
    public bool CannotTell => Supported.Count == 0;

    /// <summary>The candidate of a cause.</summary>
    public Explanation this[ExplanationCause cause] => Candidates.First(candidate => candidate.Cause == cause);

    /// <summary>The answer in one sentence.</summary>
    public string Conclusion => Supported switch
    {
        [] => "Cannot tell what explains the slow-down: none of the candidates stands out from the others and from the noise.",
        [{ Cause: ExplanationCause.Noise }] => "Nothing to explain: the slow-down is smaller than what matters.",
        var supported => $"Supported: {string.Join("; ", supported.Select(candidate => candidate.Name))}. Together they need not explain all of it, and times alone do not prove a cause.",
    };

    /// <summary>The conclusion and the candidates.</summary>
    public override string ToString() => string.Join("\n", [Conclusion, .. Candidates.Select(candidate => candidate.ToString())]);
}
