namespace SquadAnalytics;

/// <summary>Thrown by <see cref="Answer{T}.GetOrThrow"/> when there is no result; carries the refusal.</summary>
public sealed class NotEstimableException : InvalidOperationException
{
    /// <summary>Makes the exception for a refusal.</summary>
    public NotEstimableException(NotEstimable refusal)
        : base((refusal ?? throw new ArgumentNullException(nameof(refusal))).ToString()) => Refusal = refusal;

    /// <summary>Which measure was refused, why, what it needs and what was found.</summary>
    public NotEstimable Refusal { get; }
}
