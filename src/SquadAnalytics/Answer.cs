using System.Diagnostics.CodeAnalysis;

namespace SquadAnalytics;

/// <summary>What an analysis returns: its result, or a typed refusal. Too little data is an answer, not a mistake.</summary>
/// <typeparam name="T">The result.</typeparam>
[SuppressMessage("Usage", "CA2225:Operator overloads have named alternates", Justification = "The constructors are the named alternates.")]
public sealed record Answer<T>
    where T : notnull
{
    private readonly T? _result;

    /// <summary>An answer with a result.</summary>
    public Answer(T result) => _result = result ?? throw new ArgumentNullException(nameof(result));

    /// <summary>An answer that refuses.</summary>
    public Answer(NotEstimable refusal) => Refusal = refusal ?? throw new ArgumentNullException(nameof(refusal));

    /// <summary>The refusal, or null where there is a result.</summary>
    public NotEstimable? Refusal { get; }

    /// <summary>Whether there is a result.</summary>
    public bool IsEstimated => Refusal is null;

    /// <summary>Wraps a result.</summary>
    public static implicit operator Answer<T>(T result) => new(result);

    /// <summary>Wraps a refusal.</summary>
    public static implicit operator Answer<T>(NotEstimable refusal) => new(refusal);

    /// <summary>Handles both cases and returns what the handler of the one at hand returns.</summary>
    public TOut Match<TOut>(Func<T, TOut> estimated, Func<NotEstimable, TOut> refused)
    {
        ArgumentNullException.ThrowIfNull(estimated);
        ArgumentNullException.ThrowIfNull(refused);
        return Refusal is null ? estimated(_result!) : refused(Refusal);
    }

    /// <summary>Gives the result where there is one.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T result)
    {
        result = _result;
        return Refusal is null;
    }

    /// <summary>The result; throws where there is none.</summary>
    /// <exception cref="NotEstimableException">The analysis refused; the exception carries the reason.</exception>
    public T GetOrThrow() => Refusal is null ? _result! : throw new NotEstimableException(Refusal);

    /// <summary>The same refusal, or another result made from this one.</summary>
    public Answer<TOut> Select<TOut>(Func<T, TOut> selector)
        where TOut : notnull
    {
        ArgumentNullException.ThrowIfNull(selector);
        return Refusal is null ? new Answer<TOut>(selector(_result!)) : new Answer<TOut>(Refusal);
    }

    /// <summary>The result or the refusal, as text.</summary>
    public override string ToString() => Refusal is null ? _result!.ToString() ?? "" : Refusal.ToString();
}
