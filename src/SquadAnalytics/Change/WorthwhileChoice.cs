namespace SquadAnalytics.Change;

/// <summary>Where a smallest worthwhile change comes from.</summary>
public enum WorthwhileChoice
{
    /// <summary>A number that the coach already acts on, as entered.</summary>
    Entered,

    /// <summary>A fraction of the width of a performance band.</summary>
    BandFraction,

    /// <summary>A fifth of the spread between athletes, a convention for mean effects.</summary>
    SquadSpread,

    /// <summary>Three tenths of a published variation between competitions.</summary>
    PublishedCompetitionVariation,
}
