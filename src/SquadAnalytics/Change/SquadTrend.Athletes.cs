using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>The athletes' own levels and slopes.</summary>
public static partial class SquadTrend
{
    private static AthleteTrend[] AthletesOf(MixedFit fit, OwnTests[] own, SquadTrendForm form, NotEstimable noSlopes, ConfidenceLevel level)
    {
        var effects = fit.RandomEffects.ToLookup(effect => effect.Column);
        var levels = effects[RegressionDesign.Intercept].ToDictionary(effect => effect.Group, StringComparer.Ordinal);
        var deviations = effects[Week].ToDictionary(effect => effect.Group, StringComparer.Ordinal);
        // The noise of a test is every athlete's scatter about the own line. The model's takes noise for slopes where it keeps them, and slopes for noise where it leaves them out: it is the smaller of two.
        var lines = OwnLines(own);
        var (variance, df) = lines.Count >= NeededAthletes ? Noise(lines) : (Math.Pow(fit.ResidualStandardDeviation.Value, 2), Math.Max(1, own.Sum(tests => tests.Weeks.Length) - own.Length - 1));
        var errors = LevelErrors(fit, own, variance);
        var reach = StudentTDistribution.TwoSidedFactor(level, df);
        var squad = fit.Fixed(RegressionDesign.Intercept).Estimate;
        var slopes = SlopesOf(own, level);
        Estimate Deviation(RandomEffect effect, int tests) =>
            new(effect.Deviation, effect.Unit, tests, "best linear unbiased prediction, conditional SD") { StandardError = effect.ConditionalStandardDeviation };
        Estimate Level(double value, double error, int tests) =>
            new(value, squad.Unit, tests, "linear mixed model, pulled toward the squad") { StandardError = error, DegreesOfFreedom = df, Interval = new Interval(value - reach * error, value + reach * error, level) };
        return [.. own.Select((tests, i) => new AthleteTrend
        {
            AthleteId = tests.AthleteId,
            Tests = tests.Weeks.Length,
            Level = Level(squad.Value + levels[tests.AthleteId].Deviation, errors[i], tests.Weeks.Length),
            LevelDeviation = Deviation(levels[tests.AthleteId], tests.Weeks.Length),
            Slope = slopes[i],
            SlopeDeviation = form == SquadTrendForm.LevelsOnly ? noSlopes : Deviation(deviations[tests.AthleteId], tests.Weeks.Length),
            OwnSlope = OwnSlope(tests, level),
        })];
    }

    /// <summary>The athletes' slopes, each pulled toward the others by as much as its own tests leave open, with all that is not known of the squad's mean and spread and of the noise.</summary>
    private static Answer<Estimate>[] SlopesOf(OwnTests[] own, ConfidenceLevel level)
    {
        var enough = own.Count(tests => tests.Dates >= TestsForOwnSlope);
        if (enough < NeededAthletes)
        {
            var few = new NotEstimable("the athlete's slope", Refusal.TooFewAthletes, NeededAthletes, enough, $"athletes with {TestsForOwnSlope} tests of different dates");
            return [.. own.Select(_ => new Answer<Estimate>(few))];
        }

        var known = OwnLines(own);
        var (variance, df) = Noise(known);
        var hierarchy = new NormalHierarchy([.. known.Select(tests => tests.Slope!.Value)], [.. known.Select(tests => Math.Sqrt(variance / tests.Spread))], df);
        var next = 0;
        return [.. own.Select(tests => tests.Slope is null
            ? new Answer<Estimate>(new NotEstimable("the athlete's slope", Refusal.TooFewSessions, TestsForSlopes, tests.Dates, "tests of different dates"))
            : Slope(next++, tests.Weeks.Length))];

        Estimate Slope(int index, int tests)
        {
            var slope = hierarchy.Of(index);
            return new Estimate(slope.Mean, Unit.SecondsPerWeek, tests, "own least-squares slope, pulled toward the squad; mean and spread of the squad unknown") { StandardError = slope.Deviation, Interval = slope.Limits(level) };
        }
    }

    /// <summary>Limits of the SD of the athletes' slopes, from their own lines; a refusal below 6 athletes that have one.</summary>
    internal static Answer<Interval> SlopeSpreadLimits(SquadTrendResult season, ConfidenceLevel level)
    {
        var known = OwnLines([.. season.Selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).Select(tests => OwnTests.Of(tests.Key, [.. tests], season.LevelOn))]);
        if (known.Count < NeededAthletes) return TooFewLines(known.Count);
        var (variance, df) = Noise(known);
        var between = new BetweenVariance([.. known.Select(tests => tests.Slope!.Value)], [.. known.Select(tests => variance / tests.Spread)]);
        double At(double ratio) => Math.Sqrt(between.AtQ((known.Count - 1) * ratio) ?? 0);
        return new Interval(At(FDistribution.UpperQuantile(level.Alpha / 2, known.Count - 1, df)), At(FDistribution.Quantile(level.Alpha / 2, known.Count - 1, df)), level);
    }

    private static NotEstimable TooFewLines(int known) => new("how athletes' slopes differ", Refusal.TooFewAthletes, NeededAthletes, known, $"athletes with {TestsForSlopes} tests");

    /// <summary>One variance of the noise of a test for all, from every athlete's scatter about the own line, and its degrees of freedom.</summary>
    private static (double Variance, int Df) Noise(List<OwnTests> known)
    {
        var df = known.Sum(tests => tests.Weeks.Length - 2);
        return (known.Sum(tests => tests.ResidualSquares) / df, df);
    }

    private static List<OwnTests> OwnLines(OwnTests[] own) => [.. own.Where(tests => tests.Line is not null)];

    private static Answer<Estimate> OwnSlope(OwnTests tests, ConfidenceLevel level) => tests.Dates < TestsForOwnSlope
        ? new NotEstimable("the athlete's own slope", Refusal.TooFewSessions, TestsForOwnSlope, tests.Dates, "tests of different dates")
        : Internals.TInterval.Of(tests.Slope!.Value, tests.Slope.StandardError, tests.Slope.DegreesOfFreedom, Unit.SecondsPerWeek, level, tests.Weeks.Length, "least squares on weeks, own tests only");

    /// <summary>Standard errors of the levels β0 + u0 of each athlete given the variances, σ² that of the noise of a test.</summary>
    /// <remarks>Var = B Ψ + D C D' with B = (I + Ψ Z'Z / σ²)⁻¹ and D = I - B Ψ Z'Z / σ², C the covariance of β: the prediction error of u given β, and the part of β that the athlete's own
    /// tests do not take back; both are uncorrelated. With one slope for all, Ψ has a row and a column of zeros.</remarks>
    private static IReadOnlyList<double> LevelErrors(MixedFit fit, OwnTests[] own, double variance)
    {
        var deviations = fit.VarianceComponents.Select(component => component.StandardDeviation.Value).Append(0).ToArray();
        var product = (fit.Correlations.Count > 0 ? fit.Correlations[0].Correlation!.Value : 0) * deviations[0] * deviations[1];
        var psi = new[,] { { deviations[0] * deviations[0], product }, { product, deviations[1] * deviations[1] } };
        var covariance = new[,] { { fit.FixedCovariance[0][0], fit.FixedCovariance[0][1] }, { fit.FixedCovariance[1][0], fit.FixedCovariance[1][1] } };
        return [.. own.Select(tests =>
        {
            double n = tests.Weeks.Length / variance, sum = Descriptive.Sum(tests.Weeks) / variance, squares = Descriptive.Sum([.. tests.Weeks.Select(week => week * week)]) / variance;
            var cross = new[,] { { n, sum }, { sum, squares } };
            var given = SmallMatrix.Multiply(Inverse(Plus(SmallMatrix.Multiply(psi, cross), 1)), psi);
            var rest = Plus(SmallMatrix.Multiply(given, cross), 1, -1);
            var line = SmallMatrix.Multiply(SmallMatrix.Multiply(rest, covariance), SmallMatrix.Transpose(rest));
            return Math.Sqrt(given[0, 0] + line[0, 0]);
        })];
    }

    /// <summary>diagonal · I + factor · M, of two rows and columns.</summary>
    private static double[,] Plus(double[,] matrix, double diagonal, double factor = 1) => new[,]
    {
        { diagonal + factor * matrix[0, 0], factor * matrix[0, 1] },
        { factor * matrix[1, 0], diagonal + factor * matrix[1, 1] },
    };

    private static double[,] Inverse(double[,] matrix)
    {
        var determinant = matrix[0, 0] * matrix[1, 1] - matrix[0, 1] * matrix[1, 0];
        return new[,] { { matrix[1, 1] / determinant, -matrix[0, 1] / determinant }, { -matrix[1, 0] / determinant, matrix[0, 0] / determinant } };
    }

    /// <summary>One athlete's totals on weeks from the date of the levels, and the least-squares slope from 3 dates on.</summary>
    private sealed record OwnTests(string AthleteId, double[] Weeks, double[] Totals, int Dates, LinearFit? Line)
    {
        /// <summary>The athlete's own least-squares slope.</summary>
        public TEstimate? Slope { get; } = Line?.Coefficient("slope");

        /// <summary>Sum of squared residuals about the own line.</summary>
        public double ResidualSquares => Line!.ResidualSumOfSquares;

        /// <summary>Σ (w - w̄)².</summary>
        public double Spread => Descriptive.Variance(Weeks) * (Weeks.Length - 1);

        public static OwnTests Of(string athleteId, IReadOnlyList<Session> tests, DateOnly levelOn)
        {
            double[] weeks = [.. tests.Select(test => SeasonWeeks.Between(levelOn, test.Date))], totals = [.. tests.Select(test => test.Total.GetOrThrow().Value)];
            var dates = tests.Select(test => test.Date).Distinct().Count();
            return new OwnTests(athleteId, weeks, totals, dates, dates >= TestsForSlopes ? LeastSquares.FitLine(weeks, totals).GetOrThrow() : null);
        }
    }
}
