namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>What a notebook's process may use up before it is stopped.</summary>
public sealed record KernelLimits
{
    /// <summary>The limits that apply when nobody chose others.</summary>
    public static KernelLimits Default { get; } = new();

    /// <summary>How long one cell may run.</summary>
    public TimeSpan CellTime { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>How long a cancelled cell is given to end by itself before its process is ended.</summary>
    public TimeSpan CancelGrace { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long the process may take until it is ready.</summary>
    public TimeSpan StartTime { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>How long a notebook's process may lie idle before it is given up.</summary>
    public TimeSpan IdleTime { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>Managed memory of the process, in bytes; asking for more throws inside the cell.</summary>
    public long ManagedBytes { get; init; } = 1L << 30;

    /// <summary>Resident memory of the process, in bytes; using more ends the process.</summary>
    public long ResidentBytes { get; init; } = 1536L << 20;

    /// <summary>Output of one cell, in characters.</summary>
    public long OutputSize { get; init; } = 16L << 20;
}
