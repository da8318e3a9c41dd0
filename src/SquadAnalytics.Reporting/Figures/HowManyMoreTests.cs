using System.Globalization;
using ScottPlot;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How many more tests until we can tell? The chance of showing a change, against the number of tests.</summary>
public sealed record HowManyMoreTests : Figure
{
    private static readonly (Color Color, Dot Dot, float[] Dashes)[] Looks =
        [(Ink.Blue, Dot.Circle, Dashes.Solid), (Ink.Vermilion, Dot.Square, Dashes.Even), (Ink.Green, Dot.Triangle, Dashes.Fine), (Ink.Purple, Dot.Diamond, Dashes.Long)];

    /// <summary>Makes the figure.</summary>
    /// <param name="curves">One to four curves, each for one size of change.</param>
    /// <param name="wanted">The chance that is wanted, from 0 to 1, for example 0.8.</param>
    /// <param name="assumptions">What the curves rest on: <c>typical error 2.6 s, 90 % intervals</c>.</param>
    /// <exception cref="ArgumentException">Not one to four curves, or one without points.</exception>
    public HowManyMoreTests(IReadOnlyList<PowerCurve> curves, double wanted, string assumptions)
    {
        ArgumentNullException.ThrowIfNull(curves);
        if (curves.Count < 1 || curves.Count > Looks.Length || curves.Any(curve => curve.Points.Count == 0)) throw new ArgumentException($"There must be one to {Looks.Length} curves, each with points.", nameof(curves));
        if (!(wanted is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(wanted), wanted, "The wanted chance lies between 0 and 1.");
        Curves = [.. curves];
        Wanted = wanted;
        Assumptions = assumptions;
    }

    /// <summary>The figure of one question.</summary>
    /// <param name="result">The question with its curve.</param>
    /// <param name="size">The size of the change in a few letters, as it stands beside the curve: <c>4 s</c>.</param>
    public static HowManyMoreTests Of(MoreTestsResult result, string size)
    {
        ArgumentNullException.ThrowIfNull(result);
        return Of([PowerCurve.Of(size, result)], result);
    }

    /// <summary>The figure of one question asked for several sizes.</summary>
    /// <param name="curves">A curve for each size.</param>
    /// <param name="result">One of the questions, for what all of them rest on.</param>
    public static HowManyMoreTests Of(IReadOnlyList<PowerCurve> curves, MoreTestsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new HowManyMoreTests(curves, result.Wanted, string.Join(" ", result.Assumptions).TrimEnd('.'));
    }

    /// <summary>The curves.</summary>
    public IReadOnlyList<PowerCurve> Curves { get; }

    /// <summary>The chance that is wanted.</summary>
    public double Wanted { get; }

    /// <summary>What the curves rest on.</summary>
    public string Assumptions { get; }

    /// <summary>What is counted below the plot: <c>further tests of this boxer</c>.</summary>
    public string Axis { get; init; } = "number of tests";

    /// <summary>What is to be shown: <c>change</c>, <c>break</c>.</summary>
    public string What { get; init; } = "change";

    /// <inheritdoc />
    public override string Title => $"How many more tests until a {What} shows?";

    /// <inheritdoc />
    public override string Caption => $"Chance of showing a true {What} of the size named, by {Axis}; dashed line: {Percent(Wanted)}. What it rests on: {Assumptions}.";

    /// <inheritdoc />
    public override string AlternativeText => string.Join(" ", Curves.Select(curve =>
    {
        var enough = curve.Points.FirstOrDefault(point => point.Power >= Wanted);
        return enough is null
            ? $"A {What} of {curve.Name}: {Percent(Wanted)} is not reached with {Count(curve.Points[^1].Tests)} tests ({Percent(curve.Points[^1].Power)})."
            : $"A {What} of {curve.Name}: {Percent(Wanted)} is reached with {Sentences.Plural(enough.Tests, "test")}.";
    }));

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var chart = new Chart(size, 310, new Margins(48, wide ? 100 : 14, 46, wide ? 30 : 50));
        var (first, last) = (Curves.Min(curve => curve.Points[0].Tests), Curves.Max(curve => curve.Points[^1].Tests));
        chart.Limits(first - 0.5, last + 0.5, 0, 1.03);
        chart.Heading("chance of showing it");
        chart.ScaleLeft([0, 0.2, 0.4, 0.6, 0.8, 1], Percent);
        var ticks = Ticks.Between(first, last, wide ? 10 : 6).Where(tick => tick == Math.Floor(tick)).ToList();
        chart.ScaleBottom(ticks, tick => Count((int)tick), Axis);
        chart.Line([new(first - 0.5, Wanted), new(last + 0.5, Wanted)], Ink.Text, 1.3f, Dashes.Even);
        var names = new List<LineName>();
        foreach (var (curve, look) in Curves.Zip(Looks))
        {
            var points = curve.Points.Select(point => new Coordinates(point.Tests, point.Power)).ToArray();
            chart.Line(points, look.Color, 2, look.Dashes);
            chart.Dots(points, look.Color, look.Dot, 7);
            names.Add(new LineName(curve.Name, points[^1].Y, look.Color, Bold: true, look.Dot));
        }

        if (wide) chart.NameAtEnd(names, last + 0.5);
        else chart.NameAbove(names);
        return new Drawing(chart);
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
