namespace SquadAnalytics.Reporting.Documents;

/// <summary>How a recording sheet is laid out.</summary>
public sealed record RecordingSheetOptions
{
    /// <summary>How many athletes one timekeeper can take at a time, unless stated. A house value, not from the literature.</summary>
    public const int DefaultHeatSize = 12;

    /// <summary>How many athletes go in one heat; 1 or more.</summary>
    public int HeatSize { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A heat has at least one athlete."); } = DefaultHeatSize;

    /// <summary>Only members of this group on the test date; null for everybody.</summary>
    public string? Group { get; init; }

    /// <summary>Whether everybody is printed by code; otherwise juniors by code and others by name.</summary>
    public bool OnlyCodes { get; init; }

    /// <summary>Whether there is a box for each station of each set.</summary>
    public bool Stations { get; init; }

    /// <summary>Whether the page lies on its side; null decides by the number of columns.</summary>
    public bool? Landscape { get; init; }

    /// <summary>Empty lines for newcomers in the last heat.</summary>
    public int EmptyLines { get; init => field = value is >= 0 and <= 20 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "From 0 to 20 empty lines."); } = 2;
}
