using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Limits of agreement of two tests.</summary>
public static class LimitsOfAgreement
{
    private const double Conventional = 1.96;
    private const int Needed = 8;

    /// <summary>Compares two consecutive tests of a squad, by default the latest two.</summary>
    /// <inheritdoc cref="FitPairs" path="/remarks"/>
    /// <param name="sessions">Sessions of the whole squad; the last two tests that remain after selection are compared.</param>
    /// <param name="options">Measure, grouping, level of the intervals of the limits, selection; windows and blocks do not apply.</param>
    /// <returns>The limits, or <see cref="Refusal.TooFewSessions"/> below two tests, <see cref="Refusal.MixedProtocols"/>, or what <see cref="FitPairs"/> refuses.</returns>
    public static Answer<LimitsOfAgreementResult> Fit(IReadOnlyList<Session> sessions, TypicalErrorOptions? options = null)
    {
        options ??= new TypicalErrorOptions();
        return SessionSelection.Of(sessions, options.Selection).Match(
            selection =>
            {
                var tests = TestSeries.Tests(selection.Sessions, options.Grouping).TakeLast(2).ToList();
                if (tests.Count < 2) return new NotEstimable("the limits of agreement", Refusal.TooFewSessions, 2, tests.Count, "tests of the squad");
                var table = TestSeries.CompleteTable(tests, TestSeries.Value(options.Measure, Scale.Seconds));
                return FitPairs([.. table.Select(pair => pair[0])], [.. table.Select(pair => pair[1])], options.Level, Sets.SessionMeasures.UnitOf(options.Measure));
            },
            refusal => refusal);
    }

    /// <summary>Limits of agreement from paired values.</summary>
    /// <remarks>d̄ ± 1.96 s_d, d̄ and s_d the mean and SD (n - 1) of the n differences later minus earlier, in their unit; small samples d̄ ± q_t(0.975; n - 1) s_d √(1 + 1/n). Check whether |d| grows with the mean: then the ratio
    /// limits, from logarithms, are the ones to use. The interval of a limit is exact for normal differences: √n (limit - d̄) / s_d is noncentral t with n - 1 degrees of freedom and
    /// noncentrality 1.96 √n; with d̄ + 1.96 s_d ± q_t √(3/n) s_d, 95 % intervals of 12 athletes would hold 93 of 100. Source, from memory: Bland and Altman 1986, Lancet i:307-310; the fuller
    /// standard error of a limit from Bland and Altman 1999, Stat Methods Med Res 8:135-160; exact intervals: Carkeet 2015, Optom Vis Sci 92:e71-80.
    /// Assumes normal differences whose scatter does not grow with the level.</remarks>
    /// <param name="earlier">The earlier value of each pair.</param>
    /// <param name="later">The later value of each pair.</param>
    /// <param name="level">Level of the intervals of bias and limits.</param>
    /// <param name="unit">Unit of the values.</param>
    /// <returns>The limits, or <see cref="Refusal.TooFewAthletes"/> below 8 pairs, or <see cref="Refusal.ZeroVariance"/>.</returns>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static Answer<LimitsOfAgreementResult> FitPairs(IReadOnlyList<double> earlier, IReadOnlyList<double> later, ConfidenceLevel level = default, Unit unit = Unit.Seconds)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        var n = earlier.Count;
        if (later.Count != n) throw new ArgumentException($"There are {n} earlier values, but {later.Count} later ones.", nameof(later));
        if (n < Needed) return new NotEstimable("the limits of agreement", Refusal.TooFewAthletes, Needed, n, "athletes with both tests");
        double[] differences = [.. later.Zip(earlier, (second, first) => second - first)];
        double bias = Descriptive.Mean(differences), deviation = Descriptive.StandardDeviation(differences);
        if (!(deviation > 0)) return new NotEstimable("the limits of agreement", Refusal.ZeroVariance, "differences that vary", "equal differences");
        var limitError = deviation * Math.Sqrt(3.0 / n);
        Estimate Limit(double at, Interval interval, string method) => new(at, unit, n, method) { StandardError = limitError, Interval = interval, DegreesOfFreedom = n - 1 };
        double Far(double probability) => deviation * NoncentralTDistribution.Quantile(probability, n - 1, Conventional * Math.Sqrt(n)) / Math.Sqrt(n);
        double near = Far(level.Alpha / 2), far = Far(1 - level.Alpha / 2);
        var reach = StudentTDistribution.TwoSidedFactor(ConfidenceLevel.NinetyFive, n - 1) * deviation * Math.Sqrt(1 + 1.0 / n);
        return new LimitsOfAgreementResult
        {
            Bias = TInterval.OfMean(differences, unit, level, "paired t, later minus earlier", Scale.Seconds),
            Deviation = new Estimate(deviation, unit, n, "SD of differences"),
            Lower = Limit(bias - Conventional * deviation, new Interval(bias - far, bias - near, level), "bias - 1.96 SD, noncentral t"),
            Upper = Limit(bias + Conventional * deviation, new Interval(bias + near, bias + far, level), "bias + 1.96 SD, noncentral t"),
            LimitError = new Estimate(deviation * Math.Sqrt(1.0 / n + Conventional * Conventional / (2.0 * (n - 1))), unit, n, "standard error of a limit, √(1/n + 1.96²/(2 (n - 1))) SD"),
            SmallSample = new Interval(bias - reach, bias + reach, ConfidenceLevel.NinetyFive),
            Ratio = earlier.Concat(later).All(value => value > 0)
                ? RatioLimits(LogScale.Of(earlier), LogScale.Of(later))
                : new NotEstimable("the ratio limits", Refusal.NotComparable, "values above 0", "values of 0 or less"),
            Growth = Growth(earlier, later, differences, level),
        };
    }

    private static Interval RatioLimits(double[] earlier, double[] later)
    {
        double[] differences = [.. later.Zip(earlier, (second, first) => second - first)];
        double bias = Descriptive.Mean(differences), reach = Conventional * Descriptive.StandardDeviation(differences);
        return new Interval(Percent.FromLog(bias - reach).Value, Percent.FromLog(bias + reach).Value, ConfidenceLevel.NinetyFive);
    }

    private static Answer<Estimate> Growth(IReadOnlyList<double> earlier, IReadOnlyList<double> later, double[] differences, ConfidenceLevel level)
    {
        double[] means = [.. later.Zip(earlier, (second, first) => (second + first) / 2)];
        if (!(Descriptive.Variance(means) > 0)) return new NotEstimable("the growth of the scatter", Refusal.ZeroVariance, "athletes at different levels", "one level");
        return LeastSquares.FitLine(means, [.. differences.Select(Math.Abs)]).Select(line => line.Coefficient("slope"))
            .Select(slope => TInterval.Of(slope.Value, slope.StandardError, slope.DegreesOfFreedom, Unit.None, level, means.Length, "least squares of |difference| on mean"));
    }
}
