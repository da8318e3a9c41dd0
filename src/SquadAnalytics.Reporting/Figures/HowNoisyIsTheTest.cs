using ScottPlot;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How noisy is the test? The difference of two tests against their mean, with the limits of agreement.</summary>
/// <remarks>Source: Bland and Altman (1986), Lancet i:307-310; from memory.</remarks>
public sealed record HowNoisyIsTheTest : Figure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="pairs">Two tests of each athlete.</param>
    /// <param name="limits">The limits of agreement of these pairs, in seconds; the small-sample form is drawn.</param>
    /// <exception cref="ArgumentException">There is no pair, or the limits are not in seconds.</exception>
    public HowNoisyIsTheTest(IReadOnlyList<AgreementPair> pairs, LimitsOfAgreementResult limits)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentNullException.ThrowIfNull(limits);
        if (pairs.Count == 0) throw new ArgumentException("There is no pair of tests to draw.", nameof(pairs));
        if (limits.Bias.Unit != Unit.Seconds) throw new ArgumentException($"The limits must be in seconds, but are in {limits.Bias.Unit}.", nameof(limits));
        Pairs = [.. pairs];
        Limits = limits;
    }

    /// <summary>The figure of the last two tests of everyone.</summary>
    /// <param name="squad">The squad.</param>
    /// <param name="selection">Which sessions to use; with several protocols in use it names one.</param>
    /// <param name="level">Level of the intervals of the limits; 90 % by default.</param>
    /// <returns>The figure, or what <see cref="LimitsOfAgreement.FitPairs"/> refuses, or <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<HowNoisyIsTheTest> Latest(Squad squad, SelectionOptions selection, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(squad);
        return SessionSelection.Of(squad.Sessions, selection).Match(
            chosen =>
            {
                var pairs = chosen.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).Select(own => own.TakeLast(2).ToList()).Where(own => own.Count == 2)
                    .Select(own => new AgreementPair(squad.Athlete(own[1].AthleteId).LabelOn(own[1].Date), own[0].Total.GetOrThrow(), own[1].Total.GetOrThrow())).ToList();
                return LimitsOfAgreement.FitPairs([.. pairs.Select(pair => pair.First.Value)], [.. pairs.Select(pair => pair.Second.Value)], level).Select(limits => new HowNoisyIsTheTest(pairs, limits) { Format = NumberFormat.For(chosen.Sessions) });
            },
            refusal => refusal);
    }

    /// <summary>Two tests of each athlete.</summary>
    public IReadOnlyList<AgreementPair> Pairs { get; }

    /// <summary>The limits of agreement.</summary>
    public LimitsOfAgreementResult Limits { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "How noisy is the test?";

    /// <inheritdoc />
    public override string Caption =>
        $"Each athlete's last two tests: later minus earlier total against the mean of the two, {Sentences.Plural(Pairs.Count, "athlete")}. Solid line: the two tests differed by {Text(MeanDifference)} on average{Shift}; dashed lines: {LimitsName}, within which an unchanged athlete may differ by about ±{Format.Time(new Seconds((UpperLimit - LowerLimit).Value / 2))} round that. Dots that fan out to the right would say that slower athletes vary more.";

    /// <inheritdoc />
    public override string AlternativeText =>
        $"Dots of {Sentences.Plural(Pairs.Count, "athlete")}. Mean difference {Text(MeanDifference)}, {LimitsName} {Text(LowerLimit)} to {Text(UpperLimit)}. "
        + $"{Pairs.Count(pair => (pair.Second - pair.First) < LowerLimit || (pair.Second - pair.First) > UpperLimit)} of them lie outside the limits.";

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        LineName[] key = wide ? [] : [new($"mean {Text(MeanDifference)}", 0, Ink.Text, Bold: false, null), new($"limits {Text(LowerLimit)} and {Text(UpperLimit)}", 0, Ink.Text, Bold: false, null) { Dashed = true }];
        var chart = new Chart(size, 320, new Margins(48, wide ? 150 : 14, 46, Chart.RoomAbove(key, size)));
        var dots = Pairs.Select(pair => new Coordinates((pair.First.Value + pair.Second.Value) / 2, (pair.Second - pair.First).Value)).ToArray();
        var (left, right) = Ticks.Around(dots.Select(dot => dot.X), 0.06);
        var (low, high) = Ticks.Around([.. dots.Select(dot => dot.Y), LowerLimit.Value, UpperLimit.Value, 0], 0.12);
        chart.Limits(left, right, low, high);
        chart.Heading("later minus earlier total, s (faster ↓)");
        chart.NameAbove(key);
        var ticks = Ticks.Between(low, high);
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        var across = Ticks.Between(left, right, wide ? 6 : 4);
        chart.ScaleBottom(across, Ticks.Text(across), "mean of the two totals, s");
        Level(chart, wide, LowerLimit, "lower limit", left, right, Dashes.Even);
        Level(chart, wide, MeanDifference, "mean", left, right, Dashes.Solid);
        Level(chart, wide, UpperLimit, "upper limit", left, right, Dashes.Even);
        chart.Dots(dots, Ink.Blue, Dot.Circle, 9);
        return new Drawing(chart);
    }

    private void Level(Chart chart, bool wide, Seconds at, string name, double left, double right, float[] dashes)
    {
        chart.Line([new(left, at.Value), new(right, at.Value)], Ink.Text, 1.5f, dashes);
        if (wide) chart.Label($"{name} {Text(at)}", right, at.Value, Ink.Text, TextEdge.Left, right: 8);
    }

    private string Shift => Limits.Bias.Interval is { } interval && !interval.Contains(0)
        ? $" ({interval.ConfidenceLevel} interval {NumberFormat.WithSign(interval.Lower, Format.EntryDecimals)} to {NumberFormat.WithSign(interval.Upper, Format.EntryDecimals)} s: the squad as a whole moved between them)" : "";

    private Seconds MeanDifference => new(Limits.Bias.Value);

    private Seconds LowerLimit => new(Limits.SmallSample.Lower);

    private Seconds UpperLimit => new(Limits.SmallSample.Upper);

    private string LimitsName => $"{Limits.SmallSample.ConfidenceLevel} limits of agreement, small-sample form";

    private string Text(Seconds seconds) => $"{NumberFormat.WithSign(seconds.Value, Format.EntryDecimals)} s";
}
