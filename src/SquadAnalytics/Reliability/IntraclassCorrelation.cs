using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Intraclass correlations: how much of the differences between athletes is more than noise.</summary>
public static class IntraclassCorrelation
{
    private const string DependsOnSquad = "Depends on how mixed the squad is: similar boxers get a low value from the same typical error.";

    /// <summary>Estimates the correlations from the latest tests, over athletes who took all of them.</summary>
    /// <remarks>
    /// With the mean squares MSB (athletes), MSC (tests), MSE (residual) and MSW (one-way) of I athletes in k tests: ICC(1,1) = (MSB - MSW) / (MSB + (k-1) MSW); ICC(A,1) =
    /// (MSB - MSE) / (MSB + (k-1) MSE + (k/I)(MSC - MSE)); ICC(C,1) = (MSB - MSE) / (MSB + (k-1) MSE). The gap between (A,1) and (C,1) is
    /// the systematic change. Limits: F for (1,1) and (C,1); for (A,1) with approximate degrees of freedom. Those of means of k tests by
    /// Spearman and Brown. A negative estimate is shown as 0 and noted. Without a unit.
    /// Sources: Shrout and Fleiss 1979, Psychol Bull 86:420-428; McGraw and Wong 1996, Psychol Methods 1:30-46 (from memory).
    /// Assumes athletes drawn from one population, normal, and the same noise for all.
    /// </remarks>
    /// <param name="sessions">Sessions of the whole squad, in any order.</param>
    /// <param name="options">Tests, measure, level, selection; null for the defaults.</param>
    /// <returns>The correlations, or <see cref="Refusal.TooFewSessions"/> below 2 tests, <see cref="Refusal.TooFewAthletes"/> below 5
    /// athletes with all tests, <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<IntraclassCorrelationResult> Fit(IReadOnlyList<Session> sessions, IntraclassCorrelationOptions? options = null)
    {
        options ??= new IntraclassCorrelationOptions();
        return SessionSelection.Of(sessions, options.Selection).Match(
            selection =>
            {
                var tests = TestSeries.Tests(selection.Sessions, options.Grouping).TakeLast(options.Tests).ToList();
                if (tests.Count < 2) return new NotEstimable("the intraclass correlation", Refusal.TooFewSessions, 2, tests.Count, "tests of the squad");
                return Fit(TestSeries.CompleteTable(tests, TestSeries.Value(options.Measure, Scale.Seconds)), options.Level, Sets.SessionMeasures.UnitOf(options.Measure), selection.Notes);
            },
            refusal => refusal);
    }

    /// <summary>Estimates the correlations from a complete table: one row per athlete, one number per test.</summary>
    /// <inheritdoc cref="Fit(IReadOnlyList{Session}, IntraclassCorrelationOptions?)" path="/remarks"/>
    /// <param name="rows">The table, in seconds; every row has the same number of tests, 2 or more.</param>
    /// <param name="level">Level of the limits.</param>
    /// <returns>The correlations, or <see cref="Refusal.TooFewAthletes"/> below 5 rows, or <see cref="Refusal.ZeroVariance"/>.</returns>
    /// <exception cref="ArgumentException">The rows differ in length, or have fewer than 2 tests.</exception>
    public static Answer<IntraclassCorrelationResult> FitTable(IReadOnlyList<IReadOnlyList<double>> rows, ConfidenceLevel level)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count > 0 && (rows[0].Count < 2 || rows.Any(row => row.Count != rows[0].Count)))
            throw new ArgumentException("Every row needs the same number of tests, 2 or more.", nameof(rows));
        return Fit([.. rows.Select(row => row.ToArray())], level, Unit.Seconds, []);
    }

    private static Answer<IntraclassCorrelationResult> Fit(IReadOnlyList<double[]> table, ConfidenceLevel level, Unit unit, IReadOnlyList<string> notes)
    {
        if (table.Count < 5) return new NotEstimable("the intraclass correlation", Refusal.TooFewAthletes, 5, table.Count, "athletes with every test");
        var ms = MeanSquares.Of(table);
        if (!(ms.Error > 0 && ms.Between > 0))
            return new NotEstimable("the intraclass correlation", Refusal.ZeroVariance, "athletes and tests that vary", "no variation");
        int i = ms.Athletes, k = ms.Tests;
        var oneWay = new Correlation((ms.Between - ms.Within) / (ms.Between + (k - 1) * ms.Within), ByF(ms.Between / ms.Within, i - 1, i * (k - 1), k, level));
        var consistency = new Correlation((ms.Between - ms.Error) / (ms.Between + (k - 1) * ms.Error), ByF(ms.Between / ms.Error, i - 1, (i - 1) * (k - 1), k, level));
        var agreement = Agreement(ms, level);
        Estimate Single(Correlation correlation, string form) => Shown(correlation, form, ms, notes);
        Estimate OfMean(Correlation correlation, string form) => Shown(correlation.OfMean(k), form, ms, notes);
        var variance = (ms.Between - ms.Error) / k;
        return new IntraclassCorrelationResult
        {
            OneWay = Single(oneWay, "ICC(1,1)"),
            Agreement = Single(agreement, "ICC(A,1)"),
            Consistency = Single(consistency, "ICC(C,1)"),
            OneWayOfMean = OfMean(oneWay, $"ICC(1,{k})"),
            AgreementOfMean = OfMean(agreement, $"ICC(A,{k})"),
            ConsistencyOfMean = OfMean(consistency, $"ICC(C,{k})"),
            BetweenAthletes = variance > 0
                ? new Estimate(Math.Sqrt(variance), unit, i * k, "√((MSB - MSE) / k)")
                : new NotEstimable("the spread between athletes", Refusal.NegativeVarianceComponent, "more spread between athletes than noise", "less"),
            Athletes = i,
            Tests = k,
        };
    }

    private static Correlation Agreement(MeanSquares ms, ConfidenceLevel level)
    {
        double i = ms.Athletes, k = ms.Tests;
        var rho = (ms.Between - ms.Error) / (ms.Between + (k - 1) * ms.Error + k / i * (ms.Columns - ms.Error));
        var a = k * rho / (i * (1 - rho));
        var b = 1 + k * rho * (i - 1) / (i * (1 - rho));
        var sum = a * ms.Columns + b * ms.Error;
        var df = sum * sum / (a * ms.Columns * a * ms.Columns / (k - 1) + b * ms.Error * b * ms.Error / ((i - 1) * (k - 1)));
        // Where MSB is far below MSE the degrees of freedom approach 0 and this quantile is infinite; its reciprocal is 0.
        var inverse = 1 / FDistribution.UpperQuantile(level.Alpha / 2, i - 1, df);
        var upperF = FDistribution.UpperQuantile(level.Alpha / 2, df, i - 1);
        var spread = k * ms.Columns + (k * i - k - i) * ms.Error;
        return new Correlation(rho, new Interval(
            i * (inverse * ms.Between - ms.Error) / (spread + i * inverse * ms.Between),
            i * (upperF * ms.Between - ms.Error) / (spread + i * upperF * ms.Between), level));
    }

    private static Interval ByF(double f, int df1, int df2, int k, ConfidenceLevel level)
    {
        var lower = f / FDistribution.UpperQuantile(level.Alpha / 2, df1, df2);
        var upper = f * FDistribution.UpperQuantile(level.Alpha / 2, df2, df1);
        return new Interval((lower - 1) / (lower + k - 1), (upper - 1) / (upper + k - 1), level);
    }

    /// <summary>Spearman and Brown: the reliability of the mean of k tests.</summary>
    internal static double Stepped(double single, double k) => k * single / (1 + (k - 1) * single);

    private static Estimate Shown(Correlation correlation, string form, MeanSquares ms, IReadOnlyList<string> notes) =>
        new(Math.Max(0, correlation.Value), Unit.None, ms.Athletes * ms.Tests, form)
        {
            Interval = correlation.Limits,
            DegreesOfFreedom = ms.Athletes - 1,
            Notes =
            [
                DependsOnSquad,
                .. correlation.Value < 0 ? [string.Create(CultureInfo.InvariantCulture, $"Negative variance component: estimated {correlation.Value:0.000}, shown as 0.")] : Array.Empty<string>(),
                .. correlation.Limits is null ? ["No limits: the lower one of a single test is too far below 0 to be stepped up."] : Array.Empty<string>(),
                .. notes,
            ],
        };

    private readonly record struct Correlation(double Value, Interval? Limits)
    {
        /// <summary>Of the mean of k tests. Spearman and Brown's formula has a pole at -1/(k - 1), below which only the approximate limits of (A,1) can fall.</summary>
        public Correlation OfMean(int k) => new(Stepped(Value, k),
            Limits is { } limits && limits.Lower > -1.0 / (k - 1) ? new Interval(Stepped(limits.Lower, k), Stepped(limits.Upper, k), limits.ConfidenceLevel) : null);
    }
}
