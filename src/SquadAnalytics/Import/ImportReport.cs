using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>The account of an import: every data row is kept, refused or awaits a decision, and the three add up to the rows read.</summary>
/// <remarks>A data row is every line that is not blank and neither a title nor a line of headers. A file that cannot be read at all counts as one refused row.</remarks>
public sealed record ImportReport
{
    /// <summary>Data rows read.</summary>
    public required int Rows { get; init; }

    /// <summary>Rows kept, those included that repeat what is known or hold a name and nothing else.</summary>
    public required int Kept { get; init; }

    /// <summary>Rows that were not kept.</summary>
    public required IReadOnlyList<RefusedRow> Refused { get; init; }

    /// <summary>Rows that wait for a decision.</summary>
    public required IReadOnlyList<AwaitingRow> Held { get; init; }

    /// <summary>What looks implausible in kept rows.</summary>
    public required IReadOnlyList<ImportWarning> Warnings { get; init; }

    /// <summary>What else was read, assumed or passed over: title lines, columns that were not read, repeated rows.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Lines that name a date, a protocol or a club, or the columns: read, but no data rows.</summary>
    public required int TitleAndHeaderLines { get; init; }

    /// <summary>All lines that are not blank: data rows, titles and headers.</summary>
    public int Lines => Rows + TitleAndHeaderLines;

    /// <summary>Number of refused rows.</summary>
    public int RefusedRows => Refused.Count;

    /// <summary>Number of rows that wait for a decision.</summary>
    public int DecisionRows => Held.Count;

    /// <summary>Whether every row was kept.</summary>
    public bool IsClean => Kept == Rows;

    /// <summary>The three counts in one sentence.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Rows} {(Rows == 1 ? "row" : "rows")} read: {Kept} kept, {RefusedRows} refused, {DecisionRows} awaiting a decision.");
}
