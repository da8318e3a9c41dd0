namespace SquadAnalytics.Sets;

/// <summary>The set-to-set noise of one athlete: what is left of ln t after the session's level and the usual profile.</summary>
public sealed record SetNoiseResult
{
    /// <summary>The noise as a coefficient of variation, 100 (exp(σ) - 1), in percent.</summary>
    public required Estimate Noise { get; init; }

    /// <summary>The noise σ on the scale of natural logarithms.</summary>
    public required Estimate LogNoise { get; init; }

    /// <summary>Number of sets of the protocol, n.</summary>
    public required int Sets { get; init; }

    /// <summary>The sessions used, m.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>Degrees of freedom: (m - 1)(n - 1), or their sum where noises were pooled.</summary>
    public double DegreesOfFreedom => LogNoise.DegreesOfFreedom!.Value;

    /// <summary>The noise and how many sessions it rests on.</summary>
    public override string ToString() => $"Set noise {Noise} ({Selection.Sessions.Count} sessions)";
}
