using System.Globalization;

namespace SquadAnalytics;

/// <summary>One cell of a file that could not be read as it stands.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line of the file, from 1; a workbook's row number.</param>
/// <param name="Reason">Why it cannot be read.</param>
/// <param name="Accepts">What would be accepted instead.</param>
public sealed record CellProblem(string File, long Line, string Reason, string Accepts)
{
    /// <summary>Sheet of a workbook, or null.</summary>
    public string? Sheet { get; init; }

    /// <summary>Header of the column, or null where the whole line is at fault.</summary>
    public string? Column { get; init; }

    /// <summary>Number of the column, from 1, or null where the whole line is at fault.</summary>
    public int? ColumnNumber { get; init; }

    /// <summary>The cell exactly as written, or null where there is no one cell.</summary>
    public string? Text { get; init; }

    /// <summary>Place, text, reason and what would be accepted, as one sentence.</summary>
    public override string ToString()
    {
        var sheet = Sheet is null ? "" : $", sheet '{Sheet}'";
        var column = Column is null ? "" : string.Create(CultureInfo.InvariantCulture, $", column {ColumnNumber} '{Column}'");
        var text = Text is null ? "" : $" '{Text}'";
        return string.Create(CultureInfo.InvariantCulture, $"{File}{sheet}, line {Line}{column}:{text} {Reason}. Accepted: {Accepts}.");
    }
}
