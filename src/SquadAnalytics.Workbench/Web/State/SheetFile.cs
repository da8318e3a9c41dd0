using System.Globalization;
using System.Text;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>A recording sheet as one of its files.</summary>
/// <param name="Content">The bytes.</param>
/// <param name="Type">What they are.</param>
/// <param name="Name">The file's name.</param>
internal sealed record SheetFile(byte[] Content, string Type, string Name)
{
    /// <summary>The sheet; null where there is no such protocol or group.</summary>
    public static RecordingSheet? Make(Squad squad, string protocol, DateOnly date, string? group, bool stations, bool codes)
    {
        if (squad.Protocols.FirstOrDefault(known => known.Id == protocol) is not { } chosen) return null;
        try
        {
            return RecordingSheet.Of(squad, chosen, date, new RecordingSheetOptions { Group = string.IsNullOrEmpty(group) ? null : group, Stations = stations, OnlyCodes = codes });
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <summary>One of a sheet's files; null where there is no such kind.</summary>
    public static SheetFile? Of(RecordingSheet sheet, string kind)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"sheet-{sheet.Date:yyyyMMdd}.{kind}");
        return kind switch
        {
            "html" => new(Encoding.UTF8.GetBytes(sheet.ToHtml()), "text/html; charset=utf-8", name),
            "csv" => new(sheet.ToCsv(), "application/octet-stream", name),
            "xlsx" => new(sheet.ToWorkbook(), "application/octet-stream", name),
            _ => null,
        };
    }
}
