using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>The athletes' own levels and slopes.</summary>
public static partial class SquadTrend
{
    private static AthleteTrend[] AthletesOf(MixedFit fit, OwnTests[] own, SquadTrendForm form, NotEstimable noSlopes, ConfidenceLevel level)
    {
        var effects = fit.RandomEffects.ToLookup(effect => effect.Column);
        var levels = effects[RegressionDesign.Intercept].ToDictionary(effect => effect.Group, StringComparer.Ordinal);
        var slopes = effects[Week].ToDictionary(effect => effect.Group, StringComparer.Ordinal);
        var errors = PredictionErrors(fit, own);
        var reach = NormalDistribution.UpperQuantile(level.Alpha / 2);
        Estimate Predicted(double value, double error, Unit unit, int tests, string method) =>
            new(value, unit, tests, method) { StandardError = error, Interval = new Interval(value - reach * error, value + reach * error, level) };
        Estimate Deviation(RandomEffect effect, int tests) => Predicted(effect.Deviation, effect.ConditionalStandardDeviation, effect.Unit, tests, "best linear unbiased prediction, conditional SD");
        Estimate Whole(string name, RandomEffect effect, double error, int tests)
        {
            var squad = fit.Fixed(name).Estimate;
            return Predicted(squad.Value + effect.Deviation, error, squad.Unit, tests, "linear mixed model, pulled toward the squad");
        }

        return [.. own.Select((tests, i) => new AthleteTrend
        {
            AthleteId = tests.AthleteId,
            Tests = tests.Weeks.Length,
            Level = Whole(RegressionDesign.Intercept, levels[tests.AthleteId], errors[i].Level, tests.Weeks.Length),
            LevelDeviation = Deviation(levels[tests.AthleteId], tests.Weeks.Length),
            Slope = form == SquadTrendForm.LevelsOnly ? noSlopes : Whole(Week, slopes[tests.AthleteId], errors[i].Slope, tests.Weeks.Length),
            SlopeDeviation = form == SquadTrendForm.LevelsOnly ? noSlopes : Deviation(slopes[tests.AthleteId], tests.Weeks.Length),
            OwnSlope = OwnSlope(tests, level),
        })];
    }

    private static Answer<Estimate> OwnSlope(OwnTests tests, ConfidenceLevel level) => tests.Dates < TestsForOwnSlope
        ? new NotEstimable("the athlete's own slope", Refusal.TooFewSessions, TestsForOwnSlope, tests.Dates, "tests of different dates")
        : Internals.TInterval.Of(tests.Slope!.Value, tests.Slope.StandardError, tests.Slope.DegreesOfFreedom, Unit.SecondsPerWeek, level, tests.Weeks.Length, "least squares on weeks, own tests only");

    /// <summary>Standard errors of β + u of each athlete given the variances.</summary>
    /// <remarks>Var = B Ψ + D C D' with B = (I + Ψ Z'Z / σ²)⁻¹ and D = I - B Ψ Z'Z / σ², C the covariance of β: the prediction error of u given β, and the part of β that the athlete's own
    /// tests do not take back; both are uncorrelated. With one slope for all, Ψ has a row and a column of zeros.</remarks>
    private static IReadOnlyList<AthleteErrors> PredictionErrors(MixedFit fit, OwnTests[] own)
    {
        var variance = Math.Pow(fit.ResidualStandardDeviation.Value, 2);
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
            return new AthleteErrors(Math.Sqrt(given[0, 0] + line[0, 0]), Math.Sqrt(given[1, 1] + line[1, 1]));
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

    private readonly record struct AthleteErrors(double Level, double Slope);

    /// <summary>One athlete's totals on weeks from the date of the levels, and the least-squares slope from 3 dates on.</summary>
    private sealed record OwnTests(string AthleteId, double[] Weeks, double[] Totals, int Dates, TEstimate? Slope)
    {
        public static OwnTests Of(string athleteId, IReadOnlyList<Session> tests, DateOnly levelOn)
        {
            double[] weeks = [.. tests.Select(test => SeasonWeeks.Between(levelOn, test.Date))], totals = [.. tests.Select(test => test.Total.GetOrThrow().Value)];
            var dates = tests.Select(test => test.Date).Distinct().Count();
            return new OwnTests(athleteId, weeks, totals, dates, dates >= TestsForSlopes ? LeastSquares.FitLine(weeks, totals).GetOrThrow().Coefficient("slope") : null);
        }
    }
}
