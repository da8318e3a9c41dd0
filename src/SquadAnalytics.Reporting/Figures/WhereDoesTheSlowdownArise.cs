namespace SquadAnalytics.Reporting.Figures;

/// <summary>Where does the slow-down arise? Seconds by which each station, and the transitions between them, took longer in the late sets.</summary>
public sealed record WhereDoesTheSlowdownArise : Figure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="stations">Late minus early seconds of each station in circuit order, transitions last; positive is slower.</param>
    /// <param name="lateSets">Which sets are late: <c>sets 4-6</c>.</param>
    /// <param name="earlySets">Which sets are early: <c>sets 1-3</c>.</param>
    /// <param name="sessions">Number of sessions.</param>
    /// <exception cref="ArgumentException">There is no station.</exception>
    public WhereDoesTheSlowdownArise(string athlete, IReadOnlyList<LabelledEstimate> stations, string lateSets, string earlySets, int sessions)
    {
        ArgumentNullException.ThrowIfNull(stations);
        if (stations.Count == 0) throw new ArgumentException("There is no station to draw.", nameof(stations));
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Stations = [.. stations];
        LateSets = lateSets;
        EarlySets = earlySets;
        Sessions = sessions;
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>Late minus early seconds of each station.</summary>
    public IReadOnlyList<LabelledEstimate> Stations { get; }

    /// <summary>Which sets are late.</summary>
    public string LateSets { get; }

    /// <summary>Which sets are early.</summary>
    public string EarlySets { get; }

    /// <summary>Number of sessions.</summary>
    public int Sessions { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Where does the slow-down arise?";

    /// <inheritdoc />
    public override string Caption =>
        $"Seconds by which each station took longer in {LateSets} than in {EarlySets}, {Athlete}, {Sentences.Plural(Sessions, "session")}. Dot: mean; line: {LevelText.Of(Stations)}. Times cannot tell local fatigue, technique and a standard policed late apart.";

    /// <inheritdoc />
    public override string AlternativeText =>
        $"One dot with interval per station. {string.Join(" ", Stations.Select(station => $"{station.Label}: {station.Estimate.Match(Format.WithInterval, Sentences.Refusal)}."))}";

    internal override Drawing Draw(FigureSize size) => new IntervalRows(Stations)
    {
        Heading = $"time at each station, {LateSets} minus {EarlySets}",
        AxisTitle = "seconds",
        Text = estimate => $"{NumberFormat.WithSign(estimate.Value, Format.Decimals(estimate))} s",
    }.Draw(size);
}
