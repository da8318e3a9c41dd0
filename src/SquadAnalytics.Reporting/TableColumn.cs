namespace SquadAnalytics.Reporting;

/// <summary>A column of a <see cref="Table"/>.</summary>
public sealed record TableColumn
{
    /// <summary>Makes a column.</summary>
    /// <param name="header">Its heading.</param>
    /// <param name="unit">The unit of every figure in it, as printed: <c>s</c>; null for words or where the cells carry their own.</param>
    /// <param name="alignment">On which side its cells line up.</param>
    public TableColumn(string header, string? unit = null, ColumnAlignment alignment = ColumnAlignment.Left)
    {
        Header = string.IsNullOrWhiteSpace(header) ? throw new ArgumentException("A column needs a heading.", nameof(header)) : header;
        Unit = unit;
        Alignment = alignment;
    }

    /// <summary>Its heading.</summary>
    public string Header { get; }

    /// <summary>Unit of every figure in it, or null.</summary>
    public string? Unit { get; }

    /// <summary>On which side its cells line up.</summary>
    public ColumnAlignment Alignment { get; }

    /// <summary>Heading and unit as printed: <c>total (s)</c>, <c>level, s (tests)</c>.</summary>
    public string Label => Unit is null ? Header : Header.EndsWith(')') && Header.IndexOf(" (", StringComparison.Ordinal) is > 0 and var bracket ? $"{Header[..bracket]}, {Unit}{Header[bracket..]}" : $"{Header} ({Unit})";

    /// <summary>A column of figures, right-aligned.</summary>
    /// <param name="header">Its heading.</param>
    /// <param name="unit">Their unit as printed, or null.</param>
    public static TableColumn Figures(string header, string? unit = null) => new(header, unit, ColumnAlignment.Right);

    /// <summary>The label.</summary>
    public override string ToString() => Label;
}
