using System.Text.RegularExpressions;
using DocumentFormat.OpenXml.Spreadsheet;

namespace SquadAnalytics.Import;

/// <summary>Whether a workbook's cell formats show a number as a date, as a time of day, or as itself.</summary>
internal sealed partial class NumberFormats
{
    private readonly List<NumberShape> _ofStyle;

    private NumberFormats(List<NumberShape> ofStyle) => _ofStyle = ofStyle;

    /// <summary>What the style with a number makes of a stored number.</summary>
    public NumberShape this[int style] => style >= 0 && style < _ofStyle.Count ? _ofStyle[style] : NumberShape.Number;

    public static NumberFormats Read(Stylesheet? styles)
    {
        var custom = new Dictionary<uint, NumberShape>();
        foreach (var format in styles?.NumberingFormats?.Elements<NumberingFormat>() ?? [])
        {
            if (format.NumberFormatId?.Value is { } id) custom[id] = Shape(format.FormatCode?.Value ?? "");
        }

        return new NumberFormats([.. (styles?.CellFormats?.Elements<CellFormat>() ?? []).Select(format => Shape(format.NumberFormatId?.Value ?? 0, custom))]);
    }

    private static NumberShape Shape(uint id, Dictionary<uint, NumberShape> custom) => custom.TryGetValue(id, out var shape) ? shape : id switch
    {
        >= 14 and <= 17 or 22 or >= 27 and <= 31 or 36 or >= 50 and <= 58 => NumberShape.Date,
        18 or 20 => NumberShape.HoursMinutes,
        19 or 21 or >= 32 and <= 35 or >= 45 and <= 47 => NumberShape.Seconds,
        _ => NumberShape.Number,
    };

    // Day and year letters mean a date; hours or seconds without them a time of day; months alone a date.
    private static NumberShape Shape(string code)
    {
        var letters = Quoted().Replace(code.Split(';')[0], "");
        if (letters.AsSpan().ContainsAny("yYdD")) return NumberShape.Date;
        if (letters.AsSpan().ContainsAny("sS")) return NumberShape.Seconds;
        if (letters.AsSpan().ContainsAny("hH")) return NumberShape.HoursMinutes;
        return letters.AsSpan().ContainsAny("mM") ? NumberShape.Date : NumberShape.Number;
    }

    // Quoted text, escaped letters, colours and locales are no part of the pattern; [h], [mm] and [ss] are. "General" has letters of its own.
    [GeneratedRegex("""
        "[^"]*"|\\.|_.|\*.|\[(?!h+\]|m+\]|s+\])[^\]]*\]|General
        """, RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Quoted();
}

/// <summary>How a stored number is shown.</summary>
internal enum NumberShape
{
    Number,
    Date,
    HoursMinutes,
    Seconds,
}
