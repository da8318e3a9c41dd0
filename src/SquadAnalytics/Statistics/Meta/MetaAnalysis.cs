using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>Random-effects meta-analysis: puts effects with known error variances together, for example the athletes' changes between two blocks.</summary>
/// <remarks>
/// y_i = μ + u_i + e_i, u ~ N(0, τ²), e_i ~ N(0, v_i) with v_i known; w_i = 1/(v_i + τ²), μ = Σwy/Σw, SE 1/√Σw, or by Knapp and Hartung
/// √(Σw(y - μ)²/((k-1)Σw)) with t on k - 1 df. I² = τ²/(τ² + ṽ), H² = 1 + τ²/ṽ, ṽ = (k-1)/(Σ1/v - Σ1/v²/Σ1/v). Limits of τ² are the values at
/// which Q(τ²) meets the χ² quantiles. Assumes normal effects and error variances that are really known: estimated from few tests they are
/// not, and the intervals are then too narrow. Sources: DerSimonian and Laird (1986), Control Clin Trials 7:177-188; Paule and Mandel (1982), J
/// Res Natl Bur Stand 87:377-385; Knapp and Hartung (2003), Stat Med 22:2693-2710; Viechtbauer (2007), Stat Med 26:37-52; Viechtbauer
/// (2010), J Stat Softw 36(3) (all from memory).
/// </remarks>
public static class MetaAnalysis
{
    private const string Measure = "the weighted mean effect";

    /// <summary>Puts effects together.</summary>
    /// <param name="effects">The effects, one for each case.</param>
    /// <param name="options">Settings; by default REML with Knapp and Hartung's interval at 90 %.</param>
    /// <returns>The fit, or <see cref="NotEstimable"/> with fewer than two effects (<see cref="Refusal.TooFewObservations"/>), or where all effects are equal and Knapp and Hartung's interval has no width (<see cref="Refusal.ZeroVariance"/>).</returns>
    public static Answer<MetaAnalysisFit> Fit(IReadOnlyList<MeasuredEffect> effects, MetaAnalysisOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(effects);
        options ??= new MetaAnalysisOptions();
        var k = effects.Count;
        if (k < 2) return new NotEstimable(Measure, Refusal.TooFewObservations, 2, k, "effects");
        var between = new BetweenVariance([.. effects.Select(entry => entry.Effect)], [.. effects.Select(entry => entry.Variance)]);
        var plain = between.At(0);
        if (plain.Q == 0 && options.KnappHartung) return new NotEstimable(Measure, Refusal.ZeroVariance, "effects that differ", "equal effects");
        var (tauSquared, tauError) = between.Estimate(options.Estimator);
        var sums = between.At(tauSquared);
        var level = options.ConfidenceLevel;
        var error = Math.Sqrt((options.KnappHartung ? sums.Q / (k - 1) : 1) / sums.Weight);
        var df = options.KnappHartung ? k - 1 : double.PositiveInfinity;
        var factor = StudentTDistribution.TwoSidedFactor(level, df);
        var method = MethodName(options);
        var mean = new Estimate(sums.Mean, options.Unit, k, method)
        {
            StandardError = error,
            DegreesOfFreedom = options.KnappHartung ? k - 1 : null,
            Interval = new Interval(sums.Mean - factor * error, sums.Mean + factor * error, level),
            PValue = StudentTDistribution.TwoSidedPValue(sums.Mean / error, df),
        };
        var typical = (k - 1) / plain.TraceP;
        var limits = options.Estimator == BetweenVarianceEstimator.EqualEffects ? (Interval?)null : Profile(between, k, level);
        var spread = Math.Sqrt(tauSquared + error * error);
        return new MetaAnalysisFit
        {
            Mean = mean,
            BetweenVariance = Between(tauSquared, Unit.None, tau => tau, k, method, limits) with { StandardError = tauError },
            BetweenStandardDeviation = Between(tauSquared, options.Unit, Math.Sqrt, k, method, limits),
            ISquared = Share(options, plain, tauSquared, k, method, limits, tau => 100 * tau / (tau + typical), q => 100 * Math.Max(0, (q - (k - 1)) / q), Unit.Percent),
            HSquared = Share(options, plain, tauSquared, k, method, limits, tau => 1 + tau / typical, q => q / (k - 1), Unit.None),
            Q = plain.Q,
            QDegreesOfFreedom = k - 1,
            QPValue = ChiSquaredDistribution.UpperTail(plain.Q, k - 1),
            PredictionInterval = new Interval(sums.Mean - factor * spread, sums.Mean + factor * spread, level),
            Effects = [.. effects.Select(effect => Shrunken(effect, sums.Mean, error, tauSquared, factor, level, options))],
            Estimator = options.Estimator,
            Notes = Notes(options, tauSquared, k),
        };
    }

    private static ShrunkenEffect Shrunken(MeasuredEffect effect, double mean, double error, double tauSquared, double factor, ConfidenceLevel level, MetaAnalysisOptions options)
    {
        var weight = tauSquared / (tauSquared + effect.Variance);
        var prediction = weight * effect.Effect + (1 - weight) * mean;
        var deviation = Math.Sqrt(weight * effect.Variance + (1 - weight) * (1 - weight) * error * error);
        return new ShrunkenEffect(effect.Label, weight, new Estimate(prediction, options.Unit, 1, "pulled toward the mean of all effects")
        {
            StandardError = deviation,
            Interval = new Interval(prediction - factor * deviation, prediction + factor * deviation, level),
        });
    }

    private static Interval Profile(BetweenVariance between, int k, ConfidenceLevel level)
    {
        var lower = between.AtQ(ChiSquaredDistribution.Quantile(level.UpperTailProbability, k - 1)) ?? 0;
        var upper = between.AtQ(ChiSquaredDistribution.UpperQuantile(level.UpperTailProbability, k - 1)) ?? 0;
        return new Interval(lower, upper, level);
    }

    private static Estimate Between(double tauSquared, Unit unit, Func<double, double> transform, int k, string method, Interval? limits) =>
        new(transform(tauSquared), unit, k, method)
        {
            Interval = limits is { } bounds ? new Interval(transform(bounds.Lower), transform(bounds.Upper), bounds.ConfidenceLevel) : null,
        };

    /// <summary>I² and H²: from τ², or with equal effects from Q itself.</summary>
    private static Estimate Share(
        MetaAnalysisOptions options, BetweenVariance.Sums plain, double tauSquared, int k, string method, Interval? limits, Func<double, double> fromTau, Func<double, double> fromQ, Unit unit) =>
        options.Estimator == BetweenVarianceEstimator.EqualEffects
            ? new Estimate(fromQ(plain.Q), unit, k, method)
            : Between(tauSquared, unit, fromTau, k, method, limits);

    private static List<string> Notes(MetaAnalysisOptions options, double tauSquared, int k)
    {
        var notes = new List<string>();
        if (tauSquared == 0 && options.Estimator != BetweenVarianceEstimator.EqualEffects)
            notes.Add("The variance between true effects is estimated as 0, on the boundary: no evidence that they differ.");
        if (k < 5) notes.Add(string.Create(CultureInfo.InvariantCulture, $"Only {k} effects: the variance between them is hardly known."));
        return notes;
    }

    private static string MethodName(MetaAnalysisOptions options)
    {
        var estimator = options.Estimator switch
        {
            BetweenVarianceEstimator.Reml => "random effects, REML",
            BetweenVarianceEstimator.MaximumLikelihood => "random effects, ML",
            BetweenVarianceEstimator.DerSimonianLaird => "random effects, DerSimonian-Laird",
            BetweenVarianceEstimator.PauleMandel => "random effects, Paule-Mandel",
            _ => "equal effects",
        };
        return options.KnappHartung ? estimator + ", Knapp-Hartung" : estimator;
    }
}
