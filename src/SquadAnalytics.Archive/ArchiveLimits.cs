namespace SquadAnalytics.Archive;

/// <summary>What queries may use up.</summary>
public sealed record ArchiveLimits
{
    /// <summary>Memory of the database, in bytes: a query that needs more fails. Nothing is moved to disk instead.</summary>
    public long MemoryBytes { get; init; } = 512L << 20;

    /// <summary>Threads on which queries run.</summary>
    public int Threads { get; init; } = Math.Min(2, Environment.ProcessorCount);

    /// <summary>Rows that a query may return; one that returns more is refused rather than cut.</summary>
    public int Rows { get; init; } = 1_000_000;
}
