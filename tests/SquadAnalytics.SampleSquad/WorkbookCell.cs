namespace SquadAnalytics.SampleSquad;

/// <summary>How a cell of a written workbook is stored.</summary>
public enum WorkbookCellKind
{
    /// <summary>Text among the workbook's shared texts.</summary>
    SharedText,

    /// <summary>Text within the cell.</summary>
    InlineText,

    /// <summary>A plain number.</summary>
    Number,

    /// <summary>A number shown as a date.</summary>
    Date,

    /// <summary>A fraction of a day shown as hours and minutes.</summary>
    HoursMinutes,

    /// <summary>A fraction of a day shown as minutes and seconds.</summary>
    MinutesSeconds,

    /// <summary>A formula with the value it had when the file was saved.</summary>
    Formula,
}

/// <summary>One cell of a workbook to be written.</summary>
/// <param name="Kind">How it is stored.</param>
/// <param name="Text">Its text, or the formula.</param>
/// <param name="Number">Its number.</param>
public sealed record WorkbookCell(WorkbookCellKind Kind, string Text, double Number)
{
    /// <summary>No cell.</summary>
    public static WorkbookCell Blank { get; } = new(WorkbookCellKind.InlineText, "", 0);

    /// <summary>A shared text.</summary>
    public static WorkbookCell Shared(string text) => new(WorkbookCellKind.SharedText, text, 0);

    /// <summary>A text within the cell.</summary>
    public static WorkbookCell Inline(string text) => new(WorkbookCellKind.InlineText, text, 0);

    /// <summary>A number.</summary>
    public static WorkbookCell Of(double number) => new(WorkbookCellKind.Number, "", number);

    /// <summary>A date; <paramref name="countsFrom1904"/> as in the workbook.</summary>
    public static WorkbookCell Of(DateOnly date, bool countsFrom1904 = false) =>
        new(WorkbookCellKind.Date, "", date.DayNumber - (countsFrom1904 ? new DateOnly(1904, 1, 1) : new DateOnly(1899, 12, 30)).DayNumber);

    /// <summary>What a spreadsheet stores when somebody types <c>1:02</c>: hours and minutes.</summary>
    public static WorkbookCell Typed(int hours, int minutes) => new(WorkbookCellKind.HoursMinutes, "", ((hours * 60) + minutes) / 1440.0);

    /// <summary>A time entered as hours, minutes and seconds.</summary>
    public static WorkbookCell Elapsed(double seconds) => new(WorkbookCellKind.MinutesSeconds, "", seconds / 86400.0);

    /// <summary>A formula and its value.</summary>
    public static WorkbookCell Formula(string formula, double value) => new(WorkbookCellKind.Formula, formula, value);
}
