using System.Globalization;
using ScottPlot;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Is this test out of line with the athlete's own stable run? Totals over dates with the limits that a baseline set.</summary>
public sealed record IsThisTestOutOfLine : Figure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="tests">The tests by date; at least one.</param>
    /// <param name="centre">Centre line, the baseline's mean.</param>
    /// <param name="lowerLimit">Lower limit.</param>
    /// <param name="upperLimit">Upper limit.</param>
    /// <param name="rules">Which rules were applied: <c>one beyond three sigma; eight in a row on one side</c>.</param>
    /// <exception cref="ArgumentException">There is no test.</exception>
    public IsThisTestOutOfLine(string athlete, IReadOnlyList<ControlPoint> tests, Seconds centre, Seconds lowerLimit, Seconds upperLimit, string rules)
    {
        ArgumentNullException.ThrowIfNull(tests);
        if (tests.Count == 0) throw new ArgumentException("There is no test to draw.", nameof(tests));
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Tests = [.. tests.OrderBy(test => test.Date)];
        Centre = centre;
        LowerLimit = lowerLimit;
        UpperLimit = upperLimit;
        Rules = rules;
    }

    /// <summary>The figure of an athlete's own chart.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="squad">The squad, for how the athlete is labelled.</param>
    public static IsThisTestOutOfLine From(OwnChartResult chart, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(squad);
        string? Signal(ChartPoint point) => point.IsBeyondLimits ? "beyond three sigma" : point.EndsOneSidedRun ? "eighth in a row on one side" : null;
        return new IsThisTestOutOfLine(
            squad.Athlete(chart.AthleteId).LabelOn(chart.Points[^1].Session.Date),
            [.. chart.Points.Select(point => new ControlPoint(point.Session.Date, new Seconds(point.ValueSeconds), point.InBaseline, Signal(point)))],
            new Seconds(chart.Limits.Centre), new Seconds(chart.Limits.Lower), new Seconds(chart.Limits.Upper), "one beyond three sigma; eight in a row on one side")
        {
            Format = NumberFormat.For(chart.Selection.Sessions),
        };
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>The tests by date.</summary>
    public IReadOnlyList<ControlPoint> Tests { get; }

    /// <summary>Centre line.</summary>
    public Seconds Centre { get; }

    /// <summary>Lower limit.</summary>
    public Seconds LowerLimit { get; }

    /// <summary>Upper limit.</summary>
    public Seconds UpperLimit { get; }

    /// <summary>Which rules were applied.</summary>
    public string Rules { get; }

    /// <summary>What is charted: <c>session total</c>, or <c>residual from the trend</c>.</summary>
    public string Charted { get; init; } = "session total";

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Is this test out of line?";

    /// <inheritdoc />
    public override string Caption =>
        $"{char.ToUpperInvariant(Charted[0])}{Charted[1..]} of {Athlete} over dates. Open dots: the {Sentences.Plural(Tests.Count(test => test.IsBaseline), "baseline test")} that set the limits, then frozen; filled: tests since; squares: tests that break a rule ({Rules}). Solid line: baseline mean; dashed: three sigma from moving ranges. A signal asks for a look, it names no cause.";

    /// <inheritdoc />
    public override string AlternativeText
    {
        get
        {
            var signals = Tests.Where(test => test.Signal is not null).Select(test => $"{Day(test)}: {Format.Time(test.Value)}, {test.Signal}").ToList();
            return $"{Sentences.Plural(Tests.Count, "test")}, mean {Format.Time(Centre)}, limits {Format.Time(LowerLimit)} to {Format.Time(UpperLimit)}. {(signals.Count == 0 ? "No test breaks a rule" : string.Join("; ", signals))}.";
        }
    }

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        LineName[] key = wide ? [] : [new($"mean {Format.Time(Centre)}", 0, Ink.Text, Bold: false, null), new($"limits {Format.Time(LowerLimit)} and {Format.Time(UpperLimit)}", 0, Ink.Text, Bold: false, null) { Dashed = true }];
        var chart = new Chart(size, 310, new Margins(48, wide ? 130 : 14, 30, Chart.RoomAbove(key, size)));
        var room = Math.Max(2, (Tests[^1].Date.DayNumber - Tests[0].Date.DayNumber) / 50);
        var (from, to) = (Tests[0].Date.AddDays(-room), Tests[^1].Date.AddDays(room));
        var (low, high) = Ticks.Around([.. Tests.Select(test => test.Value.Value), LowerLimit.Value, UpperLimit.Value], 0.14);
        chart.Limits(DateScale.Position(from), DateScale.Position(to), low, high);
        chart.Heading($"{Charted}, s (faster ↓)");
        chart.NameAbove(key);
        chart.Zone(DateScale.Position(from), DateScale.Position(to), LowerLimit.Value, UpperLimit.Value, Ink.Zone);
        var ticks = Ticks.Between(low, high);
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        var dates = DateScale.Between(from, to, wide ? 9 : 5);
        chart.ScaleBottom(dates, DateScale.Text(dates));
        Level(chart, wide, UpperLimit, "upper limit", from, to, Dashes.Even);
        Level(chart, wide, Centre, "mean", from, to, Dashes.Solid);
        Level(chart, wide, LowerLimit, "lower limit", from, to, Dashes.Even);
        chart.Line([.. Tests.Select(Place)], Ink.Blue.WithAlpha(0.75), 1.2f);
        chart.Dots([.. Tests.Where(test => test.Signal is null && test.IsBaseline).Select(Place)], Ink.Blue, Dot.OpenCircle, 8);
        chart.Dots([.. Tests.Where(test => test.Signal is null && !test.IsBaseline).Select(Place)], Ink.Blue, Dot.Circle, 9);
        chart.Dots([.. Tests.Where(test => test.Signal is not null).Select(Place)], Ink.Vermilion, Dot.Square, 11);
        return new Drawing(chart);
    }

    private static Coordinates Place(ControlPoint test) => new(DateScale.Position(test.Date), test.Value.Value);

    private static string Day(ControlPoint test) => test.Date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private void Level(Chart chart, bool wide, Seconds at, string name, DateOnly from, DateOnly to, float[] dashes)
    {
        chart.Line([new(DateScale.Position(from), at.Value), new(DateScale.Position(to), at.Value)], Ink.Text, 1.3f, dashes);
        if (wide) chart.Label($"{name} {Format.Time(at)}", DateScale.Position(to), at.Value, Ink.Text, TextEdge.Left, right: 8);
    }
}
