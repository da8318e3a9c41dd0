namespace SquadAnalytics.Sets;

/// <summary>Whether sessions with a faster first set than usual have slower later sets.</summary>
public sealed record StartingTooFastResult
{
    /// <summary>Slope θ: percent by which the later sets change for each percent by which the first set is slower than usual, date held equal. Below 0: a faster start goes with slower later sets.</summary>
    public required Estimate Slope { get; init; }

    /// <summary>Spread of the first set about the athlete's median, in percent.</summary>
    public required Estimate StartSpread { get; init; }

    /// <summary>The set after which the later sets begin.</summary>
    public required int AfterSet { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>Whether a faster start goes with slower later sets, at the level asked for.</summary>
    public bool FasterStartsCostLater => Slope.Upper < 0;

    /// <summary>The slope.</summary>
    public override string ToString() => $"Later sets against the first: {Slope} ({Selection.Sessions.Count} sessions)";
}
