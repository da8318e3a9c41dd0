using System.Globalization;
using ScottPlot;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How much does the clock explain? Work times as timed, as the recovery model predicts them on the rolling clock, and at a fixed rest.</summary>
public sealed record HowMuchDoesTheClockExplain : Figure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="timed">Mean timed work time of each set.</param>
    /// <param name="onTheClock">The model's work times on the rolling clock.</param>
    /// <param name="atFixedRest">The model's work times with the same rest before every set.</param>
    /// <param name="fixedRest">That rest.</param>
    /// <exception cref="ArgumentException">The three series differ in length, or are empty.</exception>
    public HowMuchDoesTheClockExplain(string athlete, IReadOnlyList<Seconds> timed, IReadOnlyList<Seconds> onTheClock, IReadOnlyList<Seconds> atFixedRest, Seconds fixedRest)
    {
        ArgumentNullException.ThrowIfNull(timed);
        ArgumentNullException.ThrowIfNull(onTheClock);
        ArgumentNullException.ThrowIfNull(atFixedRest);
        if (timed.Count == 0 || onTheClock.Count != timed.Count || atFixedRest.Count != timed.Count)
            throw new ArgumentException($"The three series need the same sets, but have {timed.Count}, {onTheClock.Count} and {atFixedRest.Count}.", nameof(timed));
        Athlete = athlete ?? throw new ArgumentNullException(nameof(athlete));
        Timed = [.. timed];
        OnTheClock = [.. onTheClock];
        AtFixedRest = [.. atFixedRest];
        FixedRest = fixedRest;
    }

    /// <summary>The figure of a recovery model beside an athlete's mean times; the fixed rest is the one that a fresh set leaves on the clock.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="parameters">The model, fitted or assumed.</param>
    /// <param name="tests">Complete sessions of one protocol with a start interval; at least one.</param>
    /// <exception cref="ArgumentException">There is no session, or no start interval.</exception>
    public static HowMuchDoesTheClockExplain From(string athlete, RecoveryParameters parameters, IReadOnlyList<Session> tests)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentNullException.ThrowIfNull(tests);
        if (tests.Count == 0 || tests[0].Protocol.StartInterval is not { } interval) throw new ArgumentException("There must be a session, with a start interval.", nameof(tests));
        var sets = tests[0].Protocol.Sets;
        var rest = interval - parameters.Fresh;
        return new HowMuchDoesTheClockExplain(
            athlete,
            [.. Enumerable.Range(0, sets).Select(set => new Seconds(tests.Sum(test => test.TimesSeconds[set]) / tests.Count))],
            parameters.OnTheClock(sets, interval), parameters.AtFixedRest(sets, rest), rest);
    }

    /// <summary>The athlete as labelled in this report.</summary>
    public string Athlete { get; }

    /// <summary>Mean timed work time of each set.</summary>
    public IReadOnlyList<Seconds> Timed { get; }

    /// <summary>The model's work times on the rolling clock.</summary>
    public IReadOnlyList<Seconds> OnTheClock { get; }

    /// <summary>The model's work times at fixed rest.</summary>
    public IReadOnlyList<Seconds> AtFixedRest { get; }

    /// <summary>The fixed rest.</summary>
    public Seconds FixedRest { get; }

    /// <inheritdoc />
    public override string Title => "How much does the clock explain?";

    /// <inheritdoc />
    public override string Caption =>
        $"Mean work times of {Athlete} (dots), the recovery model on the rolling clock (solid) and with {NumberFormat.Fixed(FixedRest.Value, 0)} s of rest before every set (dashed). The gap between the lines is what the clock's shrinking rest could explain. A model, not a measurement; a session at fixed rest would settle it.";

    /// <inheritdoc />
    public override string AlternativeText => $"Three lines over sets. Timed: {Row(Timed)}. Model on the clock: {Row(OnTheClock)}. Model at fixed rest: {Row(AtFixedRest)}.";

    internal override Drawing Draw(FigureSize size)
    {
        var wide = size == FigureSize.Wide;
        var chart = new Chart(size, 310, new Margins(48, wide ? 150 : 14, 46, wide ? 30 : 50));
        var (low, high) = Ticks.Around(Timed.Concat(OnTheClock).Concat(AtFixedRest).Select(time => time.Value));
        chart.Limits(0.6, Timed.Count + 0.4, low, high);
        chart.Heading("work time, s (faster ↓)");
        var ticks = Ticks.Between(low, high);
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        chart.ScaleBottom([.. Enumerable.Range(1, Timed.Count).Select(set => (double)set)], set => set.ToString("0", CultureInfo.InvariantCulture), "set");
        chart.Line(Points(AtFixedRest), Ink.Vermilion, 2, Dashes.Even);
        chart.Dots(Points(AtFixedRest), Ink.Vermilion, Dot.Square, 6);
        chart.Line(Points(OnTheClock), Ink.Text, 2);
        chart.Dots(Points(Timed), Ink.Blue, Dot.Circle, 10);
        IReadOnlyList<LineName> names =
        [
            new("timed", Timed[^1].Value, Ink.Blue, Bold: true, Dot.Circle),
            new("model, rolling clock", OnTheClock[^1].Value, Ink.Text, Bold: false, null),
            new("model, fixed rest", AtFixedRest[^1].Value, Ink.Vermilion, Bold: false, Dot.Square),
        ];
        if (wide) chart.NameAtEnd(names, Timed.Count + 0.4);
        else chart.NameAbove(names);
        return new Drawing(chart);
    }

    private static Coordinates[] Points(IReadOnlyList<Seconds> times) => [.. times.Select((time, k) => new Coordinates(k + 1, time.Value))];

    private static string Row(IReadOnlyList<Seconds> times) => string.Join(", ", times.Select(time => $"{NumberFormat.Fixed(time.Value, 1)} s"));
}
