namespace SquadAnalytics.Import;

/// <summary>How a cell is stored in its file.</summary>
internal enum CellStorage
{
    /// <summary>As text, or as a number that reads as its text.</summary>
    Plain,

    /// <summary>As a date of a workbook; the text is the date in ISO form.</summary>
    Date,

    /// <summary>As a fraction of a day, shown as a time of day by the spreadsheet.</summary>
    DayFraction,
}

/// <summary>One cell as read.</summary>
/// <param name="Text">The text as shown.</param>
/// <param name="Storage">How it is stored.</param>
/// <param name="StoredSeconds">Of a fraction of a day: the seconds that it stands for.</param>
internal readonly record struct SourceCell(string Text, CellStorage Storage = CellStorage.Plain, double StoredSeconds = 0)
{
    /// <summary>Whether the text stands in a cell above that is merged with this one.</summary>
    public bool IsMerged { get; init; }

    public bool IsBlank => string.IsNullOrWhiteSpace(Text);
}
