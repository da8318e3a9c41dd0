using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Where does the slow-down arise? Seconds by which each station, and the transitions between them, took longer in the late sets.</summary>
public sealed record WhereDoesTheSlowdownArise : Figure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="shares">What each station, and the transitions, contribute; positive is slower.</param>
    public WhereDoesTheSlowdownArise(string athlete, StationSharesResult shares)
    {
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Shares = shares ?? throw new ArgumentNullException(nameof(shares));
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>What each station, and the transitions, contribute.</summary>
    public StationSharesResult Shares { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Where does the slow-down arise?";

    /// <inheritdoc />
    public override string Caption =>
        $"Seconds by which each station took longer in {LateSets} than in {EarlySets}, {Athlete}, {Sentences.Plural(Shares.SessionIds.Count, "session")}. Dot: mean; line: {LevelText.Of(Rows)}. Filled dots: beyond what an even slowing of all stations explains. Times cannot tell local fatigue, technique and a standard policed late apart.";

    /// <inheritdoc />
    public override string AlternativeText =>
        $"One dot with interval per station. {string.Join(" ", Shares.Rows.Select(row => $"{row.Name}: {Format.WithInterval(row.Slowdown)}."))}";

    private string LateSets => Sentences.Sets(Shares.AfterSet + 1, Shares.Selection.Sessions[0].Protocol.Sets);

    private string EarlySets => Sentences.Sets(1, Shares.AfterSet);

    private IReadOnlyList<LabelledEstimate> Rows =>
        [.. Shares.Rows.Select(row => new LabelledEstimate(row.Name, row.Slowdown) { IsSingledOut = Shares.Concentrated.Contains(row) })];

    internal override Drawing Draw(FigureSize size) => new IntervalRows(Rows)
    {
        Heading = $"time at each station, {LateSets} minus {EarlySets}",
        AxisTitle = "seconds",
        Text = estimate => $"{NumberFormat.WithSign(estimate.Value, Format.Decimals(estimate))} s",
    }.Draw(size);
}
