using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Did the blocks differ? Each athlete's two block means joined, and below them the differences with their mean and interval.</summary>
public sealed record DidTheBlocksDiffer : Figure
{
    private const float WideRow = 24;
    private const float NarrowRow = 40;
    private const float MostName = 180;
    private const float Above = 52;
    private const float Below = 46;

    /// <summary>Makes the figure.</summary>
    /// <param name="firstBlock">Name of the earlier block.</param>
    /// <param name="secondBlock">Name of the later block.</param>
    /// <param name="athletes">Each athlete's two block means.</param>
    /// <param name="meanDifference">Mean of the differences with its interval, in seconds.</param>
    /// <exception cref="ArgumentException">There is no athlete.</exception>
    public DidTheBlocksDiffer(string firstBlock, string secondBlock, IReadOnlyList<AthleteBlocks> athletes, Estimate meanDifference)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        ArgumentNullException.ThrowIfNull(meanDifference);
        if (athletes.Count == 0) throw new ArgumentException("There is no athlete to draw.", nameof(athletes));
        FirstBlock = firstBlock;
        SecondBlock = secondBlock;
        Athletes = [.. athletes.OrderBy(athlete => athlete.Difference)];
        MeanDifference = meanDifference;
    }

    /// <summary>The figure of a comparison.</summary>
    /// <param name="comparison">The same athletes in two blocks.</param>
    /// <param name="squad">The squad, for how its athletes are labelled.</param>
    public static DidTheBlocksDiffer From(BlockComparisonResult comparison, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(squad);
        return new DidTheBlocksDiffer(
            comparison.First.Block.Name,
            comparison.Second.Block.Name,
            [.. comparison.Athletes.Select(own => new AthleteBlocks(squad.Athlete(own.AthleteId).LabelOn(comparison.Second.Block.From), new Seconds(own.FirstMeanSeconds), new Seconds(own.SecondMeanSeconds)))],
            comparison.Change)
        {
            Format = NumberFormat.For(comparison.Selection.Sessions),
        };
    }

    /// <summary>Name of the earlier block.</summary>
    public string FirstBlock { get; }

    /// <summary>Name of the later block.</summary>
    public string SecondBlock { get; }

    /// <summary>Each athlete's block means, the largest gain first.</summary>
    public IReadOnlyList<AthleteBlocks> Athletes { get; }

    /// <summary>Mean of the differences.</summary>
    public Estimate MeanDifference { get; }

    /// <summary>Smallest worthwhile change, shaded; null to leave it out.</summary>
    public Seconds? SmallestWorthwhile { get; init; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Did the blocks differ?";

    /// <inheritdoc />
    public override string Caption =>
        $"Above: mean session total of each athlete in {FirstBlock} (open dot) and {SecondBlock} (filled), {Sentences.Plural(Athletes.Count, "athlete")} with tests in both. Below: {SecondBlock} minus {FirstBlock} for each; the diamond is the mean with its {LevelText.Of([MeanDifference])}."
        + (SmallestWorthwhile is { } worthwhile ? $" Shaded: smaller than the smallest worthwhile change of {Format.Time(worthwhile)}." : "")
        + " Order was not randomised; the blocks may differ for other reasons than the training.";

    /// <inheritdoc />
    public override string AlternativeText =>
        $"Joined dots of {Sentences.Plural(Athletes.Count, "athlete")}; {Athletes.Count(athlete => athlete.Difference.Value < 0)} were faster in {SecondBlock}. Mean difference {Format.Change(MeanDifference)}, {MeanDifference.ConfidenceLevel} interval {Format.ChangeLimits(MeanDifference)}. "
        + string.Join("; ", Athletes.Select(athlete => $"{athlete.Label} {NumberFormat.WithSign(athlete.Difference.Value, Format.EntryDecimals)} s")) + ".";

    internal override Drawing Draw(FigureSize size) => new(Pairs(size), Differences(size));

    /// <summary>A row for each athlete with both means as dots, so that name and numbers stand at their own dots.</summary>
    private Chart Pairs(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var row = wide ? WideRow : NarrowRow;
        var names = wide ? Math.Min(MostName, Athletes.Max(athlete => Chart.Measure(athlete.Label)) + 16) : 6;
        var legend = new List<LineName> { new(FirstBlock, 0, Ink.Text, Bold: false, Dot.OpenCircle), new(SecondBlock, 0, Ink.Text, Bold: false, Dot.Circle) };
        var chart = new Chart(size, (int)((Athletes.Count * row) + Above + Below), new Margins(names, wide ? Chart.Measure("000.0 → 000.0") + 22 : 8, Below, Above));
        var (low, high) = Ticks.Around(Athletes.SelectMany(athlete => (double[])[athlete.First.Value, athlete.Second.Value]), 0.05);
        chart.Limits(low, high, -Athletes.Count, 0);
        chart.Heading("mean session total, s");
        chart.NameAbove(legend);
        var ticks = Ticks.Between(low, high, wide ? 6 : 4);
        chart.ScaleBottom(ticks, Ticks.Text(ticks), "seconds", lines: true);
        chart.EndsBelow();
        for (var k = 0; k < Athletes.Count; k++) Row(chart, k, low, high, wide);
        return chart;
    }

    private void Row(Chart chart, int k, double low, double high, bool wide)
    {
        var athlete = Athletes[k];
        var height = wide ? -k - 0.5 : -k - 0.72;
        string Number(Seconds total) => NumberFormat.Fixed(total.Value, Format.EntryDecimals);
        var numbers = $"{Number(athlete.First)} → {Number(athlete.Second)}";
        if (wide)
        {
            chart.Label(Chart.Fit(athlete.Label, MostName - 12), low, height, Ink.Text, TextEdge.Right, right: -10);
            chart.Label(numbers, high, height, Ink.Text, TextEdge.Left, right: 10);
        }
        else
        {
            chart.Zone(low, high, -k - 0.48, -k - 0.02, Ink.Paper);
            chart.AtEdge(Chart.Fit(athlete.Label, chart.Width * 0.6f, bold: true), -k - 0.25, Ink.Text, TextEdge.Left, bold: true);
            chart.AtEdge(numbers, -k - 0.25, Ink.Text, TextEdge.Right);
        }

        var isFaster = athlete.Difference.Value <= 0;
        chart.Line([new(athlete.First.Value, height), new(athlete.Second.Value, height)], isFaster ? Ink.Blue : Ink.Vermilion, 2, isFaster ? null : Dashes.Even);
        chart.Dots([new(athlete.First.Value, height)], Ink.Text, Dot.OpenCircle, 8);
        chart.Dots([new(athlete.Second.Value, height)], Ink.Text, Dot.Circle, 8);
    }

    private Chart Differences(FigureSize size)
    {
        var chart = new Chart(size, 140, new Margins(14, 14, 46, 50));
        var ends = Athletes.Select(athlete => athlete.Difference.Value).Concat([0, MeanDifference.Value, MeanDifference.Lower ?? 0, MeanDifference.Upper ?? 0]).Concat(SmallestWorthwhile is { } s ? [-s.Value, s.Value] : Array.Empty<double>());
        var (low, high) = Ticks.Around(ends, 0.06);
        chart.Limits(low, high, 0, 2);
        chart.Heading($"{SecondBlock} minus {FirstBlock}");
        if (SmallestWorthwhile is { } zone) chart.Zone(-zone.Value, zone.Value, 0, 2, Ink.Zone);
        var ticks = Ticks.Between(low, high);
        chart.ScaleBottom(ticks, Ticks.Text(ticks), "seconds", lines: true);
        chart.Line([new(0, 0), new(0, 2)], Ink.Text, 1.5f);
        chart.Label("← faster", low, 2, Ink.Muted, TextEdge.Left, down: -10);
        chart.Label("slower →", high, 2, Ink.Muted, TextEdge.Right, down: -10);
        chart.Dots([.. Athletes.Select(athlete => new ScottPlot.Coordinates(athlete.Difference.Value, 1.4))], Ink.Blue, Dot.OpenCircle, 8);
        if (MeanDifference.Interval is { } interval) chart.Line([new(interval.Lower, 0.55), new(interval.Upper, 0.55)], Ink.Text, 2.5f);
        chart.Dots([new(MeanDifference.Value, 0.55)], Ink.Text, Dot.Diamond, 13);
        return chart;
    }
}
