using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How does everyone pace? A small profile for each athlete as seconds over the own first set, all on one scale.</summary>
public sealed record HowDoesEveryonePace : Figure
{
    private const int CellHeight = 104;

    /// <summary>Makes the figure.</summary>
    /// <param name="athletes">One profile for each athlete, drawn in this order; the first set of each is timed.</param>
    /// <param name="occasion">What they are: <c>session of 27 Mar 2031</c>.</param>
    /// <exception cref="ArgumentException">There is no athlete, or one without a timed first set.</exception>
    public HowDoesEveryonePace(IReadOnlyList<AthleteProfile> athletes, string occasion)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        if (athletes.Count == 0) throw new ArgumentException("There is no athlete to draw.", nameof(athletes));
        if (athletes.FirstOrDefault(athlete => athlete.Sets.Count == 0 || athlete.Sets[0] is null) is { } untimed) throw new ArgumentException($"The first set of '{untimed.Label}' is not timed.", nameof(athletes));
        Athletes = [.. athletes];
        Occasion = occasion;
    }

    /// <summary>The figure of one test day, athletes by code: names do not fit.</summary>
    /// <param name="squad">The squad.</param>
    /// <param name="protocol">The protocol; sessions of the same key count.</param>
    /// <param name="date">The day.</param>
    /// <returns>The figure, or <see cref="Refusal.TooFewSessions"/> where nobody's first set of that day is timed.</returns>
    public static Answer<HowDoesEveryonePace> On(Squad squad, Protocol protocol, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(protocol);
        var profiles = squad.Sessions.Where(session => session.Date == date && !session.IsVoid && session.Protocol.Key == protocol.Key && session.Sets[0].Work is not null)
            .DistinctBy(session => session.AthleteId)
            .Select(session => new AthleteProfile(squad.Athlete(session.AthleteId).Code, [.. session.Sets.Select(set => set.Work)])).ToList();
        return profiles.Count == 0
            ? new NotEstimable("how everyone paces", Refusal.TooFewSessions, 1, 0, "sessions with a timed first set")
            : new HowDoesEveryonePace(profiles, $"session of {date.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture)}");
    }

    /// <summary>The profiles.</summary>
    public IReadOnlyList<AthleteProfile> Athletes { get; }

    /// <summary>What they are.</summary>
    public string Occasion { get; }

    /// <inheritdoc />
    public override string Title => "How does everyone pace?";

    /// <inheritdoc />
    public override string Caption => $"Seconds over the athlete's own first set, {Occasion}, {Sentences.Plural(Athletes.Count, "athlete")}, all on one scale. Number: last timed set minus first; positive is slower. Where a name has no room, the athlete's code stands.";

    /// <inheritdoc />
    public override string AlternativeText => $"Small lines, one for each athlete; last timed set minus first: {string.Join("; ", Athletes.Select(athlete => $"{athlete.Label} {Last(athlete)} s"))}.";

    internal override Drawing Draw(FigureSize size)
    {
        var columns = size == FigureSize.Wide ? 6 : 3;
        var all = Athletes.SelectMany(athlete => Points(athlete, 0)).Select(point => point.Y).ToList();
        var (low, high) = Ticks.Around(all, 0.1);
        var sets = Athletes.Max(athlete => athlete.Sets.Count);
        var rows = Athletes.Chunk(columns).Select((row, index) => RowOf(size, row, columns, sets, low, high, first: index == 0)).ToList();
        return new Drawing(rows);
    }

    private static Chart RowOf(FigureSize size, AthleteProfile[] row, int columns, int sets, double low, double high, bool first)
    {
        var top = first ? 46 : 22;
        var chart = new Chart(size, CellHeight + top - 22, new Margins(34, 4, 12, top));
        var cell = sets + 1.6;
        chart.Limits(0.2, (columns * cell) - 0.8, low, high);
        if (first) chart.Heading("seconds over the first set (faster ↓)");
        for (var k = 0; k < row.Length; k++)
        {
            var shift = k * cell;
            chart.Line([new(shift + 0.7, 0), new(shift + sets + 0.3, 0)], Ink.Faint, 1);
            var points = Points(row[k], shift);
            chart.Line(points, Ink.Blue, 1.8f);
            chart.Dots(points, Ink.Blue, Dot.Circle, 4.5f);
            var last = Last(row[k]);
            var room = (chart.InnerWidth * (sets - 0.4) / ((columns * cell) - 1)) - Chart.Measure(last, 12) - 6;
            chart.Label(Chart.Fit(row[k].Label, (float)room, 12, bold: true), shift + 0.7, high, Ink.Text, TextEdge.Left, down: -8, bold: true, size: 12);
            chart.Label(last, shift + sets + 0.3, high, Ink.Muted, TextEdge.Right, down: -8, size: 12);
        }

        foreach (var tick in Ticks.Between(low, high, 3)) chart.Label(NumberFormat.WithSign(tick, 0), 0.2, tick, Ink.Muted, TextEdge.Right, right: -2, size: 12);
        return chart;
    }

    private static Coordinates[] Points(AthleteProfile athlete, double shift) =>
        [.. athlete.Sets.Select((set, k) => (set, k)).Where(item => item.set is not null).Select(item => new Coordinates(shift + item.k + 1, item.set!.Value.Value - athlete.Sets[0]!.Value.Value))];

    private static string Last(AthleteProfile athlete) => NumberFormat.WithSign(Points(athlete, 0)[^1].Y, 1);
}
