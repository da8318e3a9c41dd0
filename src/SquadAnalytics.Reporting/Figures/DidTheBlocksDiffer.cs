using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Did the blocks differ? Each athlete's two block means joined, and below them the differences with their mean and interval.</summary>
public sealed record DidTheBlocksDiffer : Figure
{
    private const int LeastHeight = 330;
    private const int NameHeight = 18;

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
        $"Above: mean session total of each athlete in {FirstBlock} and {SecondBlock}, {Sentences.Plural(Athletes.Count, "athlete")} with tests in both. Below: {SecondBlock} minus {FirstBlock} for each; the diamond is the mean with its {LevelText.Of([MeanDifference])}."
        + (SmallestWorthwhile is { } worthwhile ? $" Shaded: smaller than the smallest worthwhile change of {Format.Time(worthwhile)}." : "")
        + " Order was not randomised; the blocks may differ for other reasons than the training.";

    /// <inheritdoc />
    public override string AlternativeText =>
        $"Joined dots of {Sentences.Plural(Athletes.Count, "athlete")}; {Athletes.Count(athlete => athlete.Difference.Value < 0)} were faster in {SecondBlock}. Mean difference {Format.Change(MeanDifference)}, {MeanDifference.ConfidenceLevel} interval {Format.ChangeLimits(MeanDifference)}. "
        + string.Join("; ", Athletes.Select(athlete => $"{athlete.Label} {NumberFormat.WithSign(athlete.Difference.Value, Format.EntryDecimals)} s")) + ".";

    internal override Drawing Draw(FigureSize size) => new(Pairs(size), Differences(size));

    private Chart Pairs(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var (left, right) = wide ? (190f, 190f) : (54f, 150f);
        var chart = new Chart(size, Math.Max(LeastHeight, (Athletes.Count * NameHeight) + 74), new Margins(left, right, 30, 30));
        var (low, high) = Ticks.Around(Athletes.SelectMany(athlete => (double[])[athlete.First.Value, athlete.Second.Value]), 0.05);
        chart.Limits(-0.06, 1.06, low, high);
        chart.Heading("mean session total, s (faster ↓)");
        chart.ScaleBottom([0, 1], tick => tick == 0 ? FirstBlock : SecondBlock);
        foreach (var edge in (double[])[0, 1]) chart.Line([new(edge, low), new(edge, high)], Ink.Hairline, 1);
        foreach (var athlete in Athletes) chart.Line([new(0, athlete.First.Value), new(1, athlete.Second.Value)], athlete.Difference.Value <= 0 ? Ink.Blue : Ink.Vermilion, 1.8f, athlete.Difference.Value <= 0 ? null : Dashes.Even);
        chart.Dots([.. Athletes.Select(athlete => new ScottPlot.Coordinates(0, athlete.First.Value))], Ink.Text, Dot.OpenCircle, 8);
        chart.Dots([.. Athletes.Select(athlete => new ScottPlot.Coordinates(1, athlete.Second.Value))], Ink.Text, Dot.Circle, 8);
        string Number(Seconds total) => NumberFormat.Fixed(total.Value, Format.EntryDecimals);
        string Name(AthleteBlocks athlete, float room) => Chart.Fit(athlete.Label, room - Chart.Measure("000.0  ") - 10);
        chart.NameAtStart([.. Athletes.Select(athlete => new LineName(wide ? $"{Name(athlete, left)}  {Number(athlete.First)}" : Number(athlete.First), athlete.First.Value, Ink.Text, false, null))], -0.02);
        chart.NameAtEnd([.. Athletes.Select(athlete => new LineName($"{Number(athlete.Second)}  {Name(athlete, right)}", athlete.Second.Value, Ink.Text, false, null))], 1.02);
        return chart;
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
