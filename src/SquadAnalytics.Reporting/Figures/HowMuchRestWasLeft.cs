using System.Globalization;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How much rest was left? Each set on its piece of the rolling clock: work first, what remains until the next start is rest.</summary>
public sealed record HowMuchRestWasLeft : Figure
{
    private const float RowHeight = 32;

    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="clock">Work and rest of the session on the rolling clock.</param>
    public HowMuchRestWasLeft(string athlete, WorkAndRestResult clock)
    {
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Clock = clock ?? throw new ArgumentNullException(nameof(clock));
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>Work and rest of the session.</summary>
    public WorkAndRestResult Clock { get; }

    /// <inheritdoc />
    public override string Title => "How much rest was left?";

    /// <inheritdoc />
    public override string Caption =>
        $"Each set from its start signal to the next one {NumberFormat.SetTime(Clock.StartInterval)} later, {Athlete}, {Occasion}. Dark bar: work; light bar: rest. After the last set no rest is counted.";

    /// <inheritdoc />
    public override string AlternativeText => $"Bars on the rolling clock, {Athlete}, {Occasion}. {string.Join("; ", Clock.Sets.Select(Words))}.";

    private NumberFormat Format => NumberFormat.For([Clock.Session]);

    private string Occasion => Clock.Session.Date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    internal override Drawing Draw(FigureSize size)
    {
        const float above = 30;
        const float below = 46;
        var chart = new Chart(size, (int)((Clock.Sets.Count * RowHeight) + above + below), new Margins(44, size == FigureSize.Wide ? 40 : 16, below, above));
        var interval = Clock.StartInterval.Value;
        var right = Math.Max(interval, Clock.Sets.Max(set => set.Late.Value + set.Work.Value)) * 1.01;
        chart.Limits(0, right, -Clock.Sets.Count, 0);
        chart.Heading("set");
        var ticks = Ticks.Between(0, right, size == FigureSize.Wide ? 6 : 4);
        chart.ScaleBottom(ticks, Ticks.Text(ticks), "seconds after the start signal", lines: true);
        for (var k = 0; k < Clock.Sets.Count; k++) Row(chart, k, interval);
        chart.Line([new(interval, -Clock.Sets.Count), new(interval, 0)], Ink.Text, 1.5f, Dashes.Even);
        chart.Label("next start", interval, 0, Ink.Muted, TextEdge.Right, down: -9);
        return new Drawing(chart);
    }

    private void Row(Chart chart, int k, double interval)
    {
        var set = Clock.Sets[k];
        var (top, bottom) = (-k - 0.14, -k - 0.86);
        var finish = set.Late.Value + set.Work.Value;
        chart.Label(set.Set.ToString(CultureInfo.InvariantCulture), 0, -k - 0.5, Ink.Text, TextEdge.Right, right: -10, bold: true);
        chart.Zone(set.Late.Value, finish, bottom, top, Ink.Blue);
        if (set.Rest is { Value: > 0 }) chart.Zone(finish, interval, bottom, top, Ink.Sky.WithAlpha(0.6));
        chart.Label($"{Bare(set.Work.Value)} s work", set.Late.Value, -k - 0.5, Ink.OnMark, TextEdge.Left, right: 8, bold: true);
        if (set.Rest is { Value: > 0 } rest) chart.Label($"{Bare(rest.Value)} s rest", finish, -k - 0.5, Ink.Text, TextEdge.Left, right: 8);
        else if (set.Rest is not null) chart.Label("no rest", finish, -k - 0.5, Ink.OnMark, TextEdge.Right, right: -8, bold: true);
    }

    private string Words(ClockSet set)
    {
        var work = $"set {set.Set.ToString(CultureInfo.InvariantCulture)}: {Format.Time(set.Work)} work";
        return set.Rest switch
        {
            null => work,
            { Value: > 0 } rest => $"{work}, {Format.Time(rest)} rest",
            _ => $"{work}, no rest",
        };
    }

    private string Bare(double seconds) => NumberFormat.Fixed(seconds, Format.EntryDecimals);
}
