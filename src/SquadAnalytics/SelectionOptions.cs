using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>Which sessions an analysis may use.</summary>
public sealed record SelectionOptions
{
    private readonly int _familiarisation = 1;

    /// <summary>Every session as it was given: nothing dropped as familiarisation.</summary>
    public static SelectionOptions KeepAll { get; } = new() { Familiarisation = 0 };

    /// <summary>How many first sessions of each athlete with a protocol are dropped as familiarisation, f; 0 or more. Default 1.</summary>
    /// <remarks>A recorded setting, never silent: the selection counts and names what it dropped. Two familiarisation tests were best for
    /// a repeated-effort cycling test (McGawley and Bishop 2006, Eur J Appl Physiol 98:383-393).</remarks>
    public int Familiarisation
    {
        get => _familiarisation;
        init => _familiarisation = Require.AtLeast(0, value, nameof(Familiarisation));
    }

    /// <summary>Keeps only sessions comparable with this protocol; null asks that all sessions share one protocol key.</summary>
    public Protocol? Protocol { get; init; }

    /// <summary>First day; null for no limit. Familiarisation is counted from the athlete's first session, before this limit applies.</summary>
    public DateOnly? From { get; init; }

    /// <summary>Last day; null for no limit.</summary>
    public DateOnly? To { get; init; }

    /// <summary>The same options limited to a training block's dates.</summary>
    public SelectionOptions Within(TrainingBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        return this with { From = block.From, To = block.To };
    }
}
