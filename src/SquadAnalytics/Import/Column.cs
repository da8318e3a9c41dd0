namespace SquadAnalytics.Import;

/// <summary>One column of a block.</summary>
/// <param name="Index">Its place, from 0.</param>
/// <param name="Header">Its header as written.</param>
/// <param name="Role">What it holds.</param>
internal sealed record Column(int Index, string Header, ColumnRole Role)
{
    /// <summary>Wide files: number of the set.</summary>
    public int Set { get; init; }

    /// <summary>Wide files: the station, by number or name.</summary>
    public string? Station { get; init; }
}
