using System.Globalization;
using ScottPlot;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How was this session paced? Work time over sets, against the athlete's earlier sessions and the squad.</summary>
public sealed record HowWasItPaced : Figure
{
    private const int SheetHeight = 320;

    /// <summary>The squad's diamonds stand a little right of the set, so that no dot or bar hides them.</summary>
    private const double Aside = 0.1;

    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="session">The session shown; at least one set timed.</param>
    /// <exception cref="ArgumentException">No set is timed.</exception>
    public HowWasItPaced(string athlete, Session session)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (session.TimesSeconds.Count == 0) throw new ArgumentException("A session without a timed set cannot be drawn.", nameof(session));
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Session = session;
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>The session shown.</summary>
    public Session Session { get; }

    /// <summary>The athlete's other sessions of the protocol, drawn faint behind.</summary>
    public IReadOnlyList<Session> Earlier { get; init; } = [];

    /// <summary>The squad's median work time of each set, in order; empty to leave it out. Say in <see cref="OverAthletes"/> over how many athletes.</summary>
    public IReadOnlyList<Seconds> SquadMedian { get; init; } = [];

    /// <inheritdoc />
    /// <remarks>A median over nobody knows how many counts as one over too few.</remarks>
    public override int? OverAthletes { get => field ?? (SquadMedian.Count > 0 ? 0 : null); init; }

    /// <summary>The athlete's set-to-set noise, drawn as a bar on each set; null to leave it out.</summary>
    public SetNoiseResult? Noise { get; init; }

    /// <inheritdoc />
    public override string Title => "How was this session paced?";

    /// <inheritdoc />
    public override string Caption
    {
        get
        {
            var parts = new List<string> { $"Work time of each set, {Athlete}, {Day(Session)}." };
            if (Earlier.Count > 0) parts.Add($"Faint lines: {Sentences.Plural(Earlier.Count, "other session")} of the same athlete.");
            if (SquadMedian.Count > 0) parts.Add("Dashed line with diamonds: median of the squad.");
            if (Noise is { } noise) parts.Add($"Bars: plus and minus one SD of set-to-set noise ({new NumberFormat().Value(noise.Noise)}, {noise.DegreesOfFreedom.ToString(CultureInfo.InvariantCulture)} df); about 2 sets in 3 fall within.");
            parts.Add("Lower is faster; the time axis does not start at zero.");
            return string.Join(' ', parts);
        }
    }

    /// <inheritdoc />
    public override string AlternativeText
    {
        get
        {
            var format = NumberFormat.For([Session]);
            var sets = Session.Sets.Select(set => set.Work is { } work
                ? string.Create(CultureInfo.InvariantCulture, $"set {set.Set}: {format.Time(work)}")
                : string.Create(CultureInfo.InvariantCulture, $"set {set.Set}: not timed"));
            return $"Line with dots, {Athlete}, {Day(Session)}. {string.Join(", ", sets)}.";
        }
    }

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var chart = new Chart(size, SheetHeight, new Margins(44, wide ? 126 : 12, 46, wide ? 26 : 48));
        var current = Points(Session);
        var others = Earlier.Select(Points).Where(points => points.Length > 0).ToList();
        var squad = SquadMedian.Select((time, k) => new Coordinates(k + 1 + Aside, time.Value)).ToArray();
        var bars = Bars(current);
        var (low, high) = Ticks.Around([.. current.Concat(others.SelectMany(points => points)).Concat(squad).Select(point => point.Y), .. bars.SelectMany(bar => bar.Select(end => end.Y))], 0.05);
        var sets = Session.Protocol.Sets;
        chart.Limits(0.6, sets + 0.4, low, high);
        chart.Heading("work time, s (faster ↓)");
        var ticks = Ticks.Between(low, high);
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        chart.ScaleBottom([.. Enumerable.Range(1, sets).Select(set => (double)set)], set => NumberFormat.Fixed(set, 0));
        chart.RowBelow("set", 13, Ink.Muted);
        chart.RowBelow("s", 33, Ink.Blue);
        var decimals = NumberFormat.For([Session]).EntryDecimals;
        foreach (var set in Session.Sets)
            chart.Label(set.Work is { } work ? NumberFormat.Fixed(work.Value, decimals) : "–", set.Set, low, Ink.Blue, TextEdge.Middle, down: 33, bold: true);

        foreach (var points in others) chart.Line(points, Ink.Faint.WithAlpha(others.Count > 8 ? 0.8 : 0.95), 1.2f);
        if (squad.Length > 0)
        {
            chart.Line(squad, Ink.Text, 1.5f, Dashes.Even);
            chart.Dots(squad, Ink.Text, Dot.Diamond, 8);
        }

        foreach (var bar in bars) chart.Line(bar, Ink.Blue, 1.5f);
        chart.Line(current, Ink.Blue, 2.5f);
        chart.Dots(current, Ink.Blue, Dot.Circle, 10);
        Name(chart, size, sets, current, others, squad);
        return new Drawing(chart);
    }

    private static Coordinates[] Points(Session session) =>
        [.. session.Sets.Where(set => set.Work is not null).Select(set => new Coordinates(set.Set, set.Work!.Value.Value))];

    private static string Day(Session session) => session.Date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private Coordinates[][] Bars(Coordinates[] current) => Noise is { } noise
        ? [.. current.Select(point => (Coordinates[])[new(point.X, point.Y * (1 - (noise.Noise.Value / 100))), new(point.X, point.Y * (1 + (noise.Noise.Value / 100)))])]
        : [];

    private void Name(Chart chart, FigureSize size, int sets, Coordinates[] current, List<Coordinates[]> others, Coordinates[] squad)
    {
        var names = new List<LineName> { new(Day(Session), current[^1].Y, Ink.Blue, Bold: true, Dot.Circle) };
        if (squad.Length > 0) names.Add(new("squad median", squad[^1].Y, Ink.Text, Bold: false, Dot.Diamond));
        if (others.Count > 0) names.Add(new("other sessions", others.Average(points => points[^1].Y), Ink.Muted, Bold: false, null));
        if (size == FigureSize.Wide) chart.NameAtEnd(names, sets + 0.4);
        else chart.NameAbove(names);
    }
}
