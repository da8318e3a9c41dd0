using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Where does everyone stand? Each athlete's recent level with its interval across the bands of the protocol.</summary>
public sealed record WhereDoesEveryoneStand : Figure
{
    private const float WideRow = 24;
    private const float NarrowRow = 40;

    /// <summary>Makes the figure.</summary>
    /// <param name="standings">Where everyone stands.</param>
    /// <param name="bands">The bands on that day, fastest first; empty where none apply.</param>
    /// <param name="label">How an athlete is labelled, by id.</param>
    /// <exception cref="ArgumentException">There is no athlete.</exception>
    public WhereDoesEveryoneStand(Standings standings, IReadOnlyList<PerformanceBand> bands, Func<string, string> label)
    {
        ArgumentNullException.ThrowIfNull(standings);
        ArgumentNullException.ThrowIfNull(bands);
        ArgumentNullException.ThrowIfNull(label);
        if (standings.Athletes.Count == 0) throw new ArgumentException("There is no athlete to draw.", nameof(standings));
        Standings = standings;
        Bands = [.. bands];
        Labels = [.. standings.Athletes.Select(athlete => label(athlete.AthleteId))];
    }

    /// <summary>Where everyone stands.</summary>
    public Standings Standings { get; }

    /// <summary>The bands.</summary>
    public IReadOnlyList<PerformanceBand> Bands { get; }

    /// <summary>The athletes as labelled, in the order of the standings.</summary>
    public IReadOnlyList<string> Labels { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Where does everyone stand?";

    /// <inheritdoc />
    public override string Caption =>
        $"Recent level of {Sentences.Plural(Labels.Count, "athlete")} on {Standings.On.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture)}: mean of the last tests. Dot: level; line: {LevelText.Of(Standings.Athletes.Select(athlete => athlete.Level))} from the noise of the test"
        + (Bands.Count > 0 ? $"; dashed lines: edges of the bands, fastest first: {Sentences.List([.. Bands.Select(band => $"{band.Name} {NumberFormat.Fixed(band.Low.Value, 0)} to {NumberFormat.Fixed(band.High.Value, 0)} s")])}. A level whose line crosses an edge may lie in either band." : ".");

    /// <inheritdoc />
    public override string AlternativeText => string.Join("; ", Labels.Zip(Standings.Athletes, (label, athlete) => $"{label} {Format.Value(athlete.Level)} ({Format.Limits(athlete.Level)})")) + ".";

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var row = wide ? WideRow : NarrowRow;
        var names = wide ? Math.Min(180, Labels.Max(label => Chart.Measure(label)) + 16) : 6;
        var chart = new Chart(size, (int)((Labels.Count * row) + 104), new Margins(names, wide ? 110 : 8, 46, 58));
        var levels = Standings.Athletes.Select(athlete => athlete.Level).ToList();
        var (low, high) = Ticks.Around(levels.SelectMany(level => (double[])[level.Lower ?? level.Value, level.Upper ?? level.Value]), 0.04);
        chart.Limits(low, high, -Labels.Count, 0);
        chart.Heading("recent level, session total in s");
        var ticks = Ticks.Between(low, high, wide ? 6 : 4);
        chart.ScaleBottom(ticks, Ticks.Text(ticks), "seconds", lines: true);
        chart.EndsBelow();
        DrawBands(chart, low, high);
        for (var k = 0; k < Labels.Count; k++) DrawRow(chart, k, low, high, wide);
        return new Drawing(chart);
    }

    private void DrawBands(Chart chart, double low, double high)
    {
        foreach (var edge in Bands.SelectMany(band => (double[])[band.Low.Value, band.High.Value]).Distinct().Where(edge => edge > low && edge < high))
        {
            chart.Line([new(edge, -Labels.Count), new(edge, 0)], Ink.Text, 1.2f, Dashes.Fine);
            chart.Label(NumberFormat.Fixed(edge, edge == Math.Floor(edge) ? 0 : Format.EntryDecimals), edge, 0, Ink.Text, TextEdge.Middle, down: -10);
        }

        foreach (var band in Bands)
        {
            var (left, right) = (Math.Max(low, band.Low.Value), Math.Min(high, band.High.Value));
            var room = (right - left) / (high - low) * chart.InnerWidth;
            if (room > Chart.Measure(band.Name) + 6) chart.Label(band.Name, (left + right) / 2, 0, Ink.Muted, TextEdge.Middle, down: -10);
        }
    }

    private void DrawRow(Chart chart, int k, double low, double high, bool wide)
    {
        var level = Standings.Athletes[k].Level;
        var height = wide ? -k - 0.5 : -k - 0.72;
        var number = Format.Value(level);
        if (wide)
        {
            chart.Label(Chart.Fit(Labels[k], 168), low, height, Ink.Text, TextEdge.Right, right: -10);
            chart.Label(number, high, height, Ink.Text, TextEdge.Left, right: 10);
        }
        else
        {
            chart.Zone(low, high, -k - 0.48, -k - 0.02, Ink.Paper);
            chart.AtEdge(Chart.Fit(Labels[k], chart.Width * 0.6f, bold: true), -k - 0.25, Ink.Text, TextEdge.Left, bold: true);
            chart.AtEdge(number, -k - 0.25, Ink.Text, TextEdge.Right);
        }

        if (level.Interval is { } interval) chart.Line([new(interval.Lower, height), new(interval.Upper, height)], Ink.Blue, 2);
        chart.Dots([new(level.Value, height)], Ink.Blue, Dot.Circle, 8);
    }
}
