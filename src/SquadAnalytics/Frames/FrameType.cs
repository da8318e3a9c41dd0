namespace SquadAnalytics.Frames;

/// <summary>What the cells of a <see cref="FrameColumn"/> are.</summary>
public enum FrameType
{
    /// <summary>Text.</summary>
    Text,

    /// <summary>Numbers.</summary>
    Number,

    /// <summary>Whole numbers.</summary>
    WholeNumber,

    /// <summary>Days.</summary>
    Date,

    /// <summary>Days with a time of day.</summary>
    Moment,

    /// <summary>True or false.</summary>
    Flag,
}
