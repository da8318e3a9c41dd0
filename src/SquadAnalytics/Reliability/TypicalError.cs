using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>The noise of one session: how much a test repeated by the same athlete varies.</summary>
public static partial class TypicalError
{
    /// <summary>Tests of a window that are compared at once: one column of the design each but the first.</summary>
    private const int MostTests = RegressionDesign.MostColumns + 1;

    private const string WhatItHolds = "Weekly gaps put day-to-day form and training changes into it: the noise relevant to weekly monitoring, an upper bound for a retest after two days.";
    private const string WholeSeason = "Whole season in one piece: includes differing trends of the athletes.";

    /// <summary>Estimates the typical error of a squad.</summary>
    /// <remarks>
    /// Residual standard deviation s = √MSE, in the unit of the measure, of least squares with athlete and test effects (absences allowed; degrees of freedom = values -
    /// rank), pooled over windows of at most 4 consecutive tests of one block (<see cref="TypicalErrorOptions.WindowLength"/>); an athlete counts
    /// in a window with two tests or more in it. With two tests it equals s_d / √2, s_d the SD of paired differences. As a coefficient of variation: the same on ln y, 100 (exp(s) - 1) percent. Limits s √(df / q(1 - α/2; df)) to
    /// s √(df / q(α/2; df)), q chi-squared quantiles. "Standard error of measurement" is another name for the same number.
    /// Assumes equal error for all athletes: see the largest contributor. About 50 athletes with 3 tests give reasonable precision.
    /// Sources: Hopkins 2000, Sports Med 30:1-15; Atkinson and Nevill 1998, Sports Med 26:217-238.
    /// </remarks>
    /// <param name="sessions">Sessions of the whole squad, in any order.</param>
    /// <param name="options">Measure, window, blocks, selection; null for the defaults.</param>
    /// <returns>The error, or <see cref="Refusal.TooFewPairs"/> with fewer than 3 athletes who have two tests in a window,
    /// <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>, <see cref="Refusal.TooManyObservations"/> above 301 tests in a window.</returns>
    public static Answer<TypicalErrorResult> Fit(IReadOnlyList<Session> sessions, TypicalErrorOptions? options = null)
    {
        options ??= new TypicalErrorOptions();
        return SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    /// <summary>Estimates the typical error of a squad, with its blocks as the limits of windows.</summary>
    /// <inheritdoc cref="Fit(IReadOnlyList{Session}, TypicalErrorOptions?)" path="/remarks"/>
    /// <param name="squad">The squad with its blocks.</param>
    /// <param name="options">Measure, window, blocks, selection; null for the defaults.</param>
    /// <inheritdoc cref="Fit(IReadOnlyList{Session}, TypicalErrorOptions?)" path="/returns"/>
    /// <inheritdoc cref="Fit(IReadOnlyList{Session}, TypicalErrorOptions?)" path="/exception"/>
    public static Answer<TypicalErrorResult> Fit(Squad squad, TypicalErrorOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(squad);
        options ??= new TypicalErrorOptions();
        return Fit(squad.Sessions, options.Blocks.Count == 0 ? options with { Blocks = squad.Blocks } : options);
    }

    /// <summary>A typical error known from elsewhere, for example published or from an earlier season, in seconds.</summary>
    /// <remarks>Interval from χ² with the degrees of freedom stated. Assumes that the test and its athletes are alike there and here. Source: the one that is stated.</remarks>
    /// <param name="error">The error of one session total; above 0.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom; 1 or more.</param>
    /// <param name="source">Where it comes from.</param>
    /// <param name="level">Level of its interval.</param>
    public static TypicalErrorResult Entered(Seconds error, int degreesOfFreedom, string source, ConfidenceLevel level = default) => new()
    {
        Estimate = TInterval.OfStandardDeviation(Require.Positive(error.Value, nameof(error)), Require.AtLeast(1, degreesOfFreedom), Unit.Seconds, level, degreesOfFreedom + 1, Require.Text(source)).WithNotes("Entered, not estimated from these sessions."),
        Variation = new NotEstimable("the typical error in percent", Refusal.NotComparable, "an error estimated from sessions", "an entered error"),
        Measure = SessionMeasure.Total,
        Athletes = 0,
        Windows = 0,
        LargestContributor = null,
        LargestContribution = null,
    };

    private static Answer<TypicalErrorResult> Of(SessionSelection selection, TypicalErrorOptions options)
    {
        if (options.WindowLength is null or > MostTests)
        {
            var longest = Cut(selection, options, Scale.Seconds).Select(window => window.Select(value => value.Test).Distinct().Count()).DefaultIfEmpty().Max();
            if (longest > MostTests) return NotEstimable.TooMany("the typical error", MostTests, longest, "tests in a window");
        }

        var windows = Pooled(selection, options, Scale.Seconds);
        var athletes = windows.SelectMany(window => window.ByAthlete).GroupBy(own => own.Athlete, StringComparer.Ordinal).Select(own => new AthleteSumOfSquares(own.Key, own.Sum(part => part.SumOfSquares))).ToList();
        if (athletes.Count < 3)
            return new NotEstimable("the typical error", Refusal.TooFewPairs, 3, athletes.Count, "athletes with two tests in a window");
        var squares = windows.Sum(window => window.SumOfSquares);
        if (!(squares > 0)) return new NotEstimable("the typical error", Refusal.ZeroVariance, "tests that vary", "tests that do not");
        var largest = athletes.MaxBy(own => own.SumOfSquares);
        string[] notes =
        [
            WhatItHolds,
            .. options.WindowLength is null ? [WholeSeason] : Array.Empty<string>(),
            .. athletes.Count < 6 ? [string.Create(CultureInfo.InvariantCulture, $"Rests on {athletes.Count} athletes only: 6 or more are wanted.")] : Array.Empty<string>(),
            .. selection.Notes,
        ];
        return new TypicalErrorResult
        {
            Estimate = Deviation(windows, options, Scale.Seconds, options.Measure.UnitOf(), notes),
            Variation = Percentage(selection, options, () => Deviation(Pooled(selection, options, Scale.Log), options, Scale.Log, Unit.Percent, notes)),
            Measure = options.Measure,
            Athletes = athletes.Count,
            Windows = windows.Count,
            LargestContributor = largest.Athlete,
            LargestContribution = new Percent(100 * largest.SumOfSquares / squares),
        };
    }

    /// <summary>The error in percent where the measure is a time.</summary>
    private static Answer<Estimate> Percentage(SessionSelection selection, TypicalErrorOptions options, Func<Answer<Estimate>> variation) =>
        options.Measure.UnitOf() == Unit.Seconds && selection.Sessions.All(session => SessionMeasures.Of(session, options.Measure) > 0)
            ? variation()
            : new NotEstimable("the typical error in percent", Refusal.NotComparable, "times above 0", $"a measure in {options.Measure.UnitOf().Symbol()}");

    private static Estimate Deviation(List<AthleteTestResiduals> windows, TypicalErrorOptions options, Scale scale, Unit unit, string[] notes)
    {
        var df = windows.Sum(window => window.DegreesOfFreedom);
        var method = string.Create(CultureInfo.InvariantCulture, $"residual SD after athlete and test effects{(scale == Scale.Log ? " of ln seconds, back-transformed" : "")}, {windows.Count} windows");
        return TInterval.OfStandardDeviation(Math.Sqrt(windows.Sum(window => window.SumOfSquares) / df), df, unit, options.Level, windows.Sum(window => window.Observations), method, scale).WithNotes(notes);
    }

    private static List<AthleteTestResiduals> Pooled(SessionSelection selection, TypicalErrorOptions options, Scale scale) =>
        [.. Cut(selection, options, scale).Select(AthleteTestResiduals.Of).OfType<AthleteTestResiduals>()];

    private static IEnumerable<IReadOnlyList<TestValue>> Cut(SessionSelection selection, TypicalErrorOptions options, Scale scale) =>
        TestSeries.Windows(selection.Sessions, options.Blocks, options.Grouping, options.WindowLength, TestSeries.Value(options.Measure, scale));
}
