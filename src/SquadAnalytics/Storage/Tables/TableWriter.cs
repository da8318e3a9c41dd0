namespace SquadAnalytics.Storage.Tables;

/// <summary>Takes the rows of one table, cell by cell in the order of its columns; the tables say what stands in a row, and not where it goes.</summary>
internal abstract class TableWriter
{
    public abstract TableWriter Text(string? text);

    public abstract TableWriter Date(DateOnly? date);

    public abstract TableWriter Moment(DateTimeOffset moment);

    public abstract TableWriter Number(double? number);

    public abstract TableWriter Integer(long? number);

    public abstract TableWriter Flag(bool flag);
}
