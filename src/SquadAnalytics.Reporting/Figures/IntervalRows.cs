using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// A row for each estimate: dot, interval, the number in words. With room the name stands left of its row and the number right of it;
/// on a phone both stand above it.
/// </summary>
internal sealed class IntervalRows
{
    private const float WideRow = 30;
    private const float NarrowRow = 44;
    private const float MostName = 190;
    private const float MostText = 270;
    private const float Above = 46;
    private const float Below = 46;
    private readonly IReadOnlyList<LabelledEstimate> _rows;

    public IntervalRows(IReadOnlyList<LabelledEstimate> rows) => _rows = rows;

    /// <summary>The heading above the plot.</summary>
    public required string Heading { get; init; }

    /// <summary>The axis title below the plot.</summary>
    public required string AxisTitle { get; init; }

    /// <summary>How an estimate is written beside its row.</summary>
    public required Func<Estimate, string> Text { get; init; }

    /// <summary>The shaded zone around zero, plus and minus; null for none.</summary>
    public double? Zone { get; init; }

    /// <summary>Words at the two ends of the axis.</summary>
    public string LowEnd { get; init; } = "faster";

    /// <summary>Words at the two ends of the axis.</summary>
    public string HighEnd { get; init; } = "slower";

    public Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var row = wide ? WideRow : NarrowRow;
        var names = wide ? Math.Min(MostName, _rows.Max(item => Chart.Measure(item.Label)) + 16) : 6;
        var texts = wide ? Math.Min(MostText, _rows.Max(item => Chart.Measure(Beside(item, MostText))) + 16) : 6;
        var chart = new Chart(size, (int)((_rows.Count * row) + Above + Below), new Margins(names, texts, Below, Above));
        var estimates = _rows.Select(item => item.Estimate).Where(answer => answer.IsEstimated).Select(answer => answer.GetOrThrow()).ToList();
        var (low, high) = Ticks.Around([0, .. estimates.SelectMany(Ends), .. Zone is { } zone ? [-zone, zone] : Array.Empty<double>()], 0.06);
        chart.Limits(low, high, -_rows.Count, 0);
        Ground(chart, low, high);
        for (var k = 0; k < _rows.Count; k++)
        {
            if (wide) WideRowOf(chart, k, low, high);
            else NarrowRowOf(chart, k, low, high);
        }

        return new Drawing(chart);
    }

    private static IEnumerable<double> Ends(Estimate estimate) => [estimate.Value, estimate.Lower ?? estimate.Value, estimate.Upper ?? estimate.Value];

    /// <summary>What stands beside a row, in the longest form that fits.</summary>
    private string Beside(LabelledEstimate item, float room)
    {
        string[] forms = item.Estimate.Match<string[]>(
            estimate => item.Remark is { } remark ? [$"{Text(estimate)} · {remark}", Text(estimate)] : [Text(estimate)],
            refusal => Sentences.NoTestThisWeek(refusal) is { } absent ? [absent] : [$"needs {refusal.Needed}, has {refusal.Found}", "not enough data"]);
        return forms.FirstOrDefault(form => Chart.Measure(form) + 16 <= room) ?? forms[^1];
    }

    private void Ground(Chart chart, double low, double high)
    {
        chart.Heading(Heading);
        if (Zone is { } zone) chart.Zone(-zone, zone, -_rows.Count, 0, Ink.Zone);
        var ticks = Ticks.Between(low, high, 5);
        chart.ScaleBottom(ticks, Ticks.Text(ticks), AxisTitle, lines: true);
        chart.Line([new(0, -_rows.Count), new(0, 0)], Ink.Text, 1.5f);
        chart.Label($"← {LowEnd}", low, 0, Ink.Muted, TextEdge.Left, down: -10);
        chart.Label($"{HighEnd} →", high, 0, Ink.Muted, TextEdge.Right, down: -10);
    }

    private void WideRowOf(Chart chart, int k, double low, double high)
    {
        var item = _rows[k];
        chart.Label(Chart.Fit(item.Label, MostName - 12), low, -k - 0.5, Ink.Text, TextEdge.Right, right: -10);
        chart.Label(Beside(item, MostText), high, -k - 0.5, item.Estimate.IsEstimated ? Ink.Text : Ink.Muted, TextEdge.Left, right: 10);
        Mark(chart, item, -k - 0.5);
    }

    /// <summary>Name and number above the mark, on a strip of paper so that no line runs through them.</summary>
    private void NarrowRowOf(Chart chart, int k, double low, double high)
    {
        var item = _rows[k];
        chart.Zone(low, high, -k - 0.5, -k - 0.02, Ink.Paper);
        var label = Chart.Fit(item.Label, chart.Width * 0.55f, bold: true);
        chart.AtEdge(label, -k - 0.27, Ink.Text, TextEdge.Left, bold: true);
        var room = chart.Width - Chart.Measure(label, bold: true);
        chart.AtEdge(Beside(item, room), -k - 0.27, item.Estimate.IsEstimated ? Ink.Text : Ink.Muted, TextEdge.Right);
        Mark(chart, item, -k - 0.74);
    }

    private static void Mark(Chart chart, LabelledEstimate item, double height)
    {
        if (!item.Estimate.TryGet(out var estimate)) return;
        if (estimate.Interval is { } interval) chart.Line([new(interval.Lower, height), new(interval.Upper, height)], Ink.Blue, 2);
        chart.Dots([new(estimate.Value, height)], Ink.Blue, item.IsSingledOut ? Dot.Circle : Dot.OpenCircle, 9);
    }
}
