using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Where a data row stands.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Sheet">Sheet of a workbook, or null.</param>
/// <param name="Line">Line of the file, from 1; a workbook's row number.</param>
public readonly record struct RowPlace(string File, string? Sheet, int Line)
{
    /// <summary>File, sheet and line in words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}{(Sheet is null ? "" : $", sheet '{Sheet}'")}, line {Line}");
}
