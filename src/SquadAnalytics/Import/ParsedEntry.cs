namespace SquadAnalytics.Import;

/// <summary>What a person has to say about an entry before its value counts.</summary>
internal enum EntryDoubt : byte
{
    None,

    /// <summary>The value holds only if the comma is a decimal mark.</summary>
    DecimalComma,

    /// <summary>The spreadsheet stored a fraction of a day; the value is the seconds stored.</summary>
    DayFraction,
}

/// <summary>One time cell, kept small because a file may hold millions.</summary>
/// <param name="Column">Its column, from 0.</param>
/// <param name="Set">Number of the set; 0 for the total.</param>
/// <param name="Station">0 for a whole set; a station's number; or, below 0, -1 minus the number of the station's name.</param>
/// <param name="Kind">What was written.</param>
/// <param name="Doubt">What has to be said before the value counts.</param>
/// <param name="Decimals">Decimals typed.</param>
/// <param name="Seconds">The time, where there is one.</param>
internal readonly record struct ParsedEntry(short Column, short Set, short Station, EntryKind Kind, EntryDoubt Doubt, byte Decimals, double Seconds)
{
    public bool IsTotal => Set == 0;

    public bool IsTimed => Kind == EntryKind.Timed;
}
