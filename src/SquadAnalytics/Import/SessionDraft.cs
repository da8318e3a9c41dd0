namespace SquadAnalytics.Import;

/// <summary>One test of one athlete as far as it is understood: one row of a wide file, several of a long one.</summary>
internal sealed class SessionDraft(Block block, SessionTexts texts)
{
    public Block Block { get; } = block;

    /// <summary>What the rows say about who, when and what.</summary>
    public SessionTexts Texts { get; } = texts;

    public List<ParsedRow> Rows { get; } = new(1);

    public Athlete? Athlete { get; set; }

    public DateOnly? Date { get; set; }

    public Protocol? Protocol { get; set; }

    public int Occasion { get; set; } = 1;

    /// <summary>Where its set times are readings of the running clock: the start interval in seconds; otherwise null.</summary>
    public double? ClockSeconds { get; set; }

    /// <summary>What its station times mean.</summary>
    public StationMeaning Stations { get; set; }

    /// <summary>Place, timer and temperature, where the file has them.</summary>
    public SessionRemarks? Remarks { get; set; }

    /// <summary>Whether anything is left of it that may become a session.</summary>
    public bool IsOpen => Rows.Any(row => row.IsKept) && !Rows.Any(row => row.IsHeld);

    public int FirstLine => Rows[0].Line;

    /// <summary>Refuses every row.</summary>
    public void Refuse(RowFault fault)
    {
        foreach (var row in Rows) row.Refuse(fault);
    }
}

/// <summary>Numbers of the texts that tell sessions of one block apart.</summary>
internal readonly record struct SessionTexts(int Name, int Date, int Protocol, int Label);

/// <summary>What station times mean.</summary>
internal enum StationMeaning
{
    Split,
    Cumulative,
    Clock,
}

/// <summary>What a file says about a session beside its times.</summary>
internal sealed record SessionRemarks(string? Place, string? Timer, double? TemperatureCelsius);
