namespace SquadAnalytics.Storage.Tables;

/// <summary>One table of the logbook: a CSV file, its columns and keys.</summary>
internal sealed record Table(string Name, string Description, IReadOnlyList<Column> Columns)
{
    /// <summary>The file in the logbook folder.</summary>
    public string File => Name + ".csv";

    /// <summary>The columns that identify a row.</summary>
    public IReadOnlyList<Column> Key { get; init; } = [];

    public IReadOnlyList<ForeignKey> References { get; init; } = [];

    /// <summary>Whether a logbook may lack the file: a table that came later, or that a club need not have.</summary>
    public bool IsOptional { get; init; }

    /// <summary>Whether analyses read the table, so that it belongs to the fingerprint of the data.</summary>
    public bool IsData { get; init; } = true;
}
