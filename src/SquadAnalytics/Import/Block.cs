namespace SquadAnalytics.Import;

/// <summary>Rows under one line of headers, with what the lines above it say.</summary>
/// <param name="Sheet">The sheet it stands in.</param>
/// <param name="Header">Its columns.</param>
/// <param name="Title">Date and protocol from the title lines.</param>
/// <param name="Line">The line where it begins.</param>
internal sealed record Block(SourceSheet Sheet, HeaderLine Header, BlockTitle Title, int Line)
{
    /// <summary>Numbers of the station names in the order met: where the protocol lists no stations, this order numbers them.</summary>
    public List<short> StationNames { get; } = [];

    /// <summary>Names the block in the ids of decisions: file, sheet, first line.</summary>
    public string Key => FormattableString.Invariant($"{Place}:{Line}");

    /// <summary>File and sheet.</summary>
    public string Place => Sheet.Name is null ? Path.GetFileName(Sheet.File) : $"{Path.GetFileName(Sheet.File)}:{Sheet.Name}";

    /// <summary>File, sheet and line in words.</summary>
    public string InWords => FormattableString.Invariant($"{Sheet.File}{(Sheet.Name is null ? "" : $", sheet '{Sheet.Name}'")}, from line {Line}");

    public bool Equals(Block? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(this);
}
