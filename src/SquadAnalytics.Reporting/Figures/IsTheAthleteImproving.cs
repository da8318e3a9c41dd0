using System.Globalization;
using ScottPlot;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Is the athlete improving? Session totals on their true dates, gaps left as gaps, band edges thin, and the week's load below.</summary>
public sealed record IsTheAthleteImproving : Figure
{
    private const int LongestGapDays = 21;

    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="totals">Session totals in seconds by date; at least one.</param>
    /// <exception cref="ArgumentException">There is no total.</exception>
    public IsTheAthleteImproving(string athlete, IReadOnlyList<DatedValue> totals)
    {
        ArgumentNullException.ThrowIfNull(totals);
        if (totals.Count == 0) throw new ArgumentException("There is no session total to draw.", nameof(totals));
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Totals = [.. totals.OrderBy(total => total.Date)];
    }

    /// <summary>The figure of one athlete's season: totals with their smooth line and trend, band edges, blocks, and the weeks' load where all days are known.</summary>
    /// <param name="squad">The squad.</param>
    /// <param name="athleteId">The athlete.</param>
    /// <param name="selection">Which sessions to use; with several protocols in use it names one.</param>
    /// <param name="level">Level of the trend's interval; 90 % by default.</param>
    /// <returns>The figure, or <see cref="Refusal.TooFewSessions"/> without an eligible session, or <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<IsTheAthleteImproving> From(Squad squad, string athleteId, SelectionOptions selection, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(squad);
        var own = squad.SessionsOf(athleteId);
        return SessionSelection.OfOneAthlete(own, selection).Match<Answer<IsTheAthleteImproving>>(
            chosen =>
            {
                if (chosen.Sessions.Count == 0) return new NotEstimable("the season's picture", Refusal.TooFewSessions, 1, 0, "eligible sessions");
                DateOnly first = chosen.Sessions[0].Date, last = chosen.Sessions[^1].Date;
                return new IsTheAthleteImproving(squad.Athlete(athleteId).LabelOn(last), [.. chosen.Sessions.Select(session => new DatedValue(session.Date, session.Total.GetOrThrow().Value))])
                {
                    Smooth = SeasonLine.Smooth(own, new SeasonLineOptions { Selection = selection }).Match<IReadOnlyList<DatedValue>>(line => [.. line.Points.Select(point => new DatedValue(point.Date, point.LineSeconds))], _ => []),
                    SmoothName = "exponentially weighted mean",
                    Trend = SeasonTrend.Fit(own, new SeasonTrendOptions { Selection = selection, Level = level }).Match<Estimate?>(trend => trend.Slope, _ => null),
                    Bands = chosen.Sessions[^1].Protocol.BandsOn(last),
                    Blocks = [.. squad.Blocks.Where(block => block.Includes(athleteId))],
                    WeeklyLoad = [.. KnownLoads(squad, athleteId, first, last)],
                    Format = NumberFormat.For(chosen.Sessions),
                };
            },
            refusal => refusal);
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>Session totals by date.</summary>
    public IReadOnlyList<DatedValue> Totals { get; }

    /// <summary>A smoothed line through the totals by date; descriptive. Empty to leave it out.</summary>
    public IReadOnlyList<DatedValue> Smooth { get; init; } = [];

    /// <summary>What the smoothed line is: <c>exponentially weighted mean</c>.</summary>
    public string SmoothName { get; init; } = "smoothed";

    /// <summary>The trend per week with its interval, stated in the caption; null to leave it out.</summary>
    public Estimate? Trend { get; init; }

    /// <summary>Bands whose edges are drawn where they lie near the totals.</summary>
    public IReadOnlyList<PerformanceBand> Bands { get; init; } = [];

    /// <summary>Training blocks, shaded in turn and named.</summary>
    public IReadOnlyList<TrainingBlock> Blocks { get; init; } = [];

    /// <summary>Training load of each week by its first day, in arbitrary units; empty to leave the panel out. A week without an entry is not known, not 0.</summary>
    public IReadOnlyList<DatedValue> WeeklyLoad { get; init; } = [];

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => WeeklyLoad.Count == 0 ? "Is the athlete improving?" : "Is the athlete improving, and how much load came before?";

    /// <inheritdoc />
    public override string Caption
    {
        get
        {
            var parts = new List<string> { $"Session totals of {Athlete} on their dates, {Sentences.Plural(Totals.Count, "test")}; the line breaks where no test was made for more than {LongestGapDays / 7} weeks." };
            if (Smooth.Count > 0) parts.Add($"Dashed line: {SmoothName}, descriptive, without an interval.");
            if (Trend is { } trend) parts.Add($"Trend: {Format.SignedChange(trend)}{(Format.Interval(trend) is { } interval ? $", {interval}" : "")}.");
            if (Bands.Count > 0) parts.Add("Thin lines: edges of the protocol's bands.");
            if (WeeklyLoad.Count > 0) parts.Add("Below: training load of each week in arbitrary units, AU (rating of perceived exertion times minutes); a week without a bar has no record.");
            parts.Add("The time axis does not start at zero.");
            return string.Join(' ', parts);
        }
    }

    /// <inheritdoc />
    public override string AlternativeText
    {
        get
        {
            var (first, last, best) = (Totals[0], Totals[^1], Totals.MinBy(total => total.Value)!);
            return $"Dots over dates, {Athlete}: {Sentences.Plural(Totals.Count, "test")} from {Day(first)} ({Seconds(first)}) to {Day(last)} ({Seconds(last)}); fastest {Seconds(best)} on {Day(best)}."
                + (WeeklyLoad.Count > 0 ? $" Bars of weekly load below, from {NumberFormat.Fixed(WeeklyLoad.Min(week => week.Value), 0)} to {NumberFormat.Fixed(WeeklyLoad.Max(week => week.Value), 0)} arbitrary units." : "");
        }
    }

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var (from, to) = Span();
        var margins = new Margins(48, wide && Bands.Count > 0 ? 110 : 14, WeeklyLoad.Count > 0 ? 10 : 30, Chart.RoomAbove(Key, size) + (Blocks.Count > 0 ? 18 : 0));
        var totals = TotalsChart(size, from, to, margins);
        return WeeklyLoad.Count == 0 ? new Drawing(totals) : new Drawing(totals, LoadChart(size, from, to, margins with { Bottom = 30, Top = 26 }));
    }

    private static IEnumerable<DatedValue> KnownLoads(Squad squad, string athleteId, DateOnly first, DateOnly last) =>
        Load.WeeklyLoad.Weeks([.. squad.Contexts.Where(day => day.AthleteId == athleteId)])
            .Where(week => week.From.AddDays(6) >= first && week.From <= last && week.Load.IsEstimated)
            .Select(week => new DatedValue(week.From, week.Load.GetOrThrow().Sum.Value));

    /// <summary>What the marks are, for a picture that is saved without its caption.</summary>
    private IReadOnlyList<LineName> Key => Smooth.Count == 0 ? [] : [new("test", 0, Ink.Blue, Bold: false, Dot.Circle), new(SmoothName, 0, Ink.Text, Bold: false, null) { Dashed = true }];

    private static string Day(DatedValue value) => value.Date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private string Seconds(DatedValue value) => Format.Time(new Seconds(value.Value));

    private (DateOnly From, DateOnly To) Span()
    {
        var from = WeeklyLoad.Select(week => week.Date).Append(Totals[0].Date).Min();
        var to = WeeklyLoad.Select(week => week.Date.AddDays(6)).Append(Totals[^1].Date).Max();
        var room = Math.Max(2, (to.DayNumber - from.DayNumber) / 50);
        return (from.AddDays(-room), to.AddDays(room));
    }

    private Chart TotalsChart(FigureSize size, DateOnly from, DateOnly to, Margins margins)
    {
        var chart = new Chart(size, 260 + (int)margins.Top, margins);
        var (low, high) = Ticks.Around(Totals.Concat(Smooth).Select(total => total.Value), 0.08);
        chart.Limits(DateScale.Position(from), DateScale.Position(to), low, high);
        chart.Heading("session total, s (faster ↓)");
        chart.NameAbove(Key);
        ShadeBlocks(chart, from, to, low, high);
        var ticks = Ticks.Between(low, high);
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        if (WeeklyLoad.Count == 0) Dates(chart, size, from, to);
        BandEdges(chart, size, from, to, low, high);
        foreach (var run in DateScale.Runs(Totals, LongestGapDays).Where(run => run.Length > 1)) chart.Line(run, Ink.Blue.WithAlpha(0.7), 1.2f);
        foreach (var run in DateScale.Runs(Smooth, LongestGapDays).Where(run => run.Length > 1)) chart.Line(run, Ink.Text, 1.6f, Dashes.Even);
        chart.Dots([.. Totals.Select(DateScale.At)], Ink.Blue, Dot.Circle, 8);
        return chart;
    }

    private Chart LoadChart(FigureSize size, DateOnly from, DateOnly to, Margins margins)
    {
        var chart = new Chart(size, 130, margins);
        var high = WeeklyLoad.Max(week => week.Value) * 1.08;
        chart.Limits(DateScale.Position(from), DateScale.Position(to), 0, high);
        chart.Heading("training load of the week, AU (RPE × minutes)");
        ShadeBlocks(chart, from, to, 0, high, named: false);
        var ticks = Ticks.Between(0, high, 3);
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        foreach (var week in WeeklyLoad) chart.Zone(DateScale.Position(week.Date) + 0.6, DateScale.Position(week.Date) + 6.4, 0, week.Value, Ink.Orange);
        Dates(chart, size, from, to);
        return chart;
    }

    private static void Dates(Chart chart, FigureSize size, DateOnly from, DateOnly to)
    {
        var ticks = DateScale.Between(from, to, size == FigureSize.Wide ? 9 : 5);
        chart.ScaleBottom(ticks, DateScale.Text(ticks));
    }

    private void ShadeBlocks(Chart chart, DateOnly from, DateOnly to, double low, double high, bool named = true)
    {
        var shown = Blocks.Where(block => block.From <= to && block.To >= from).OrderBy(block => block.From).ToList();
        for (var k = 0; k < shown.Count; k++)
        {
            var left = DateScale.Position(shown[k].From < from ? from : shown[k].From);
            var right = DateScale.Position(shown[k].To > to ? to : shown[k].To);
            if (k % 2 == 0) chart.Zone(left, right, low, high, Ink.Zone);
            if (named) chart.Label(shown[k].Name, left, high, Ink.Muted, TextEdge.Left, down: -9);
        }
    }

    private void BandEdges(Chart chart, FigureSize size, DateOnly from, DateOnly to, double low, double high)
    {
        foreach (var band in Bands)
        {
            if (band.High.Value > low && band.High.Value < high)
                chart.Line([new(DateScale.Position(from), band.High.Value), new(DateScale.Position(to), band.High.Value)], Ink.Muted, 1, Dashes.Fine);
            var middle = (Math.Max(low, band.Low.Value) + Math.Min(high, band.High.Value)) / 2;
            if (middle > low && middle < high && size == FigureSize.Wide) chart.Label(band.Name, DateScale.Position(to), middle, Ink.Muted, TextEdge.Left, right: 8);
        }
    }
}
