using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>Linear mixed models: fixed effects for everyone, random effects for groups that may be nested or crossed.</summary>
/// <remarks>
/// y = Xβ + Zb + e, b ~ N(0, σ²ΛΛ'), e ~ N(0, σ²I). Λ is block diagonal, one lower triangle per group of a term, with parameters θ; for
/// each θ the best β and σ are known in closed form, so that only θ is searched. The data are reduced once to orthogonal-triangular
/// sufficient statistics per group, after which an evaluation costs as many small steps as there are groups (fewer where groups have the same
/// design), whatever the number of observations. Groups of nested or crossed terms that share observations are worked on together, at a cost that grows with the cube of
/// their number of random effects (at most 2,500), with the square of the fixed effects (at most 300): nested terms scale with the outer groups, fully crossed ones are for some hundred groups. Assumes normal random effects and residuals, equal residual variance, and that missing observations are missing at random.
/// Sources: Laird and Ware (1982), Biometrics 38:963-974; Patterson and Thompson (1971), Biometrika 58:545-554; Bates et al. (2015), J Stat
/// Softw 67(1) (all from memory).
/// </remarks>
public static partial class MixedModel
{
    private const double SingularTolerance = 1e-4;
    internal const string Measure = "the mixed model";

    /// <summary>Fits a linear mixed model.</summary>
    /// <param name="design">Response, fixed effects and random terms.</param>
    /// <param name="options">Settings; by default REML, Satterthwaite df, 90 % intervals, singular fits simplified.</param>
    /// <returns>
    /// The fit, or <see cref="NotEstimable"/>: fewer than two groups in a term, or no more observations than fixed effects (<see cref="Refusal.TooFewObservations"/>), as many random effects as
    /// observations or more, or fixed effects that are combinations of each other (<see cref="Refusal.WeaklyIdentified"/>), a response
    /// without variance about the fixed effects or within groups (<see cref="Refusal.ZeroVariance"/>), no settled optimum (<see cref="Refusal.NotConverged"/>),
    /// more than 300 fixed effects or 2,500 random effects that share observations (<see cref="Refusal.TooManyObservations"/>).
    /// </returns>
    /// <exception cref="ArgumentException">Kenward and Roger's method together with maximum likelihood.</exception>
    public static Answer<MixedFit> Fit(MixedDesign design, MixedModelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        options ??= new MixedModelOptions();
        if (options is { DegreesOfFreedom: FixedEffectDegreesOfFreedom.KenwardRoger, Criterion: MixedCriterion.MaximumLikelihood })
            throw new ArgumentException("Kenward and Roger's method rests on REML; choose REML or other degrees of freedom.", nameof(options));
        if (design.FixedEffects.Count > RegressionDesign.MostColumns) return NotEstimable.TooMany(Measure, RegressionDesign.MostColumns, design.FixedEffects.Count, "fixed effects");
        var columns = OrthonormalColumns.Of([.. design.FixedEffects.Select(column => column.Array)], design.Response.Array);
        if (Unfit(design, columns) is { } refusal) return refusal;
        var notes = new List<string>();
        for (var current = design; ;)
        {
            var blocks = MixedBlocks.Of(current, columns);
            if (!blocks.TryGet(out var data)) return blocks.Refusal!;
            if (TooManyEffects(data) is { } tooMany) return tooMany;
            var deviance = new MixedDeviance(data, columns, options.Criterion);
            if (!ScattersWithinGroups(deviance)) return new NotEstimable(Measure, Refusal.ZeroVariance, "observations that scatter within groups", "none");
            var search = MixedSearch.Run(deviance);
            if (!search.Converged)
                return new NotEstimable(Measure, Refusal.NotConverged, "an optimum that the search settles on", string.Create(CultureInfo.InvariantCulture, $"none after {deviance.Kernel.Evaluations} evaluations"));
            var singular = SingularTerms(deviance.Data, search.Theta);
            if (singular.Count > 0 && options.SingularFits == SingularFits.Simplify && Simplified(current, deviance.Data, search.Theta, singular, notes) is { } simpler)
            {
                current = simpler;
                continue;
            }

            return Describe(current, deviance, search, options, singular, notes);
        }
    }

    internal static Estimate FixedEstimate(
        double value, Unit unit, int observations, string method, FixedEffectInference inference, ReadOnlySpan<double> weights, ConfidenceLevel level)
    {
        var standardError = Math.Sqrt(inference.Variance(weights));
        var df = inference.DegreesOfFreedom(weights);
        var factor = StudentTDistribution.TwoSidedFactor(level, df);
        return new Estimate(value, unit, observations, method)
        {
            StandardError = standardError,
            DegreesOfFreedom = double.IsFinite(df) ? df : null,
            Interval = new Interval(value - factor * standardError, value + factor * standardError, level),
            PValue = StudentTDistribution.TwoSidedPValue(value / standardError, df),
        };
    }

    private static NotEstimable? Unfit(MixedDesign design, OrthonormalColumns columns)
    {
        var p = design.FixedEffects.Count;
        if (design.Observations <= p)
            return new NotEstimable(Measure, Refusal.TooFewObservations, p + 1, design.Observations, "observations");
        if (columns.Rank < p)
            return new NotEstimable(Measure, Refusal.WeaklyIdentified, Count(p, "independent fixed-effect columns"), Count(columns.Rank, "independent columns"));
        double rest = 0, total = 0;
        foreach (var entry in columns.Residuals) rest += entry * entry;
        foreach (var entry in design.Response.Array) total += entry * entry;
        return rest <= 1e-26 * total ? new NotEstimable(Measure, Refusal.ZeroVariance, "a response that varies about the fixed effects", "none") : null;
    }

    private static NotEstimable? TooManyEffects(MixedBlocks data)
    {
        foreach (var term in data.Terms)
        {
            if (term.Levels.Length < 2) return new NotEstimable(Measure, Refusal.TooFewObservations, 2, term.Levels.Length, "groups in each random term");
            if (term.Levels.Length * term.Width >= data.Observations)
            {
                return new NotEstimable(
                    Measure, Refusal.WeaklyIdentified, Count(term.Levels.Length * term.Width + 1, "observations for its random effects"), Count(data.Observations, "observations"));
            }
        }

        return null;
    }

    /// <summary>Whether random effects of any size leave a residual; where they leave none the likelihood has no maximum.</summary>
    private static bool ScattersWithinGroups(MixedDeviance deviance)
    {
        var theta = new double[deviance.Data.ThetaCount];
        foreach (var term in deviance.Data.Terms)
        {
            for (var r = 0; r < term.Width; r++) theta[term.ThetaIndex(r, r)] = 1e8;
        }

        deviance.Kernel.Evaluate(theta);
        return deviance.Kernel.Rss > 1e-14 * CompensatedSum.OfProducts(deviance.Columns.Residuals, deviance.Columns.Residuals);
    }

    private static string Count(int number, string noun) => string.Create(CultureInfo.InvariantCulture, $"{number} {noun}");

    private static MixedFit Describe(
        MixedDesign design, MixedDeviance deviance, MixedSearch search, MixedModelOptions options, IReadOnlyList<int> singular, List<string> notes)
    {
        var data = deviance.Data;
        var p = data.FixedCount;
        var n = data.Observations;
        var sigma = Math.Sqrt(deviance.ResidualVariance);
        var (root, beta) = Coefficients(deviance);
        var covariance = Covariance(deviance, root);
        FixedEffectInference inference = options.DegreesOfFreedom switch
        {
            FixedEffectDegreesOfFreedom.Satterthwaite => SatterthwaiteInference.Of(deviance, search, covariance, root),
            FixedEffectDegreesOfFreedom.KenwardRoger => KenwardRogerInference.Of(deviance, search.Theta, root),
            FixedEffectDegreesOfFreedom.Normal => new NormalInference(covariance),
            _ => throw new ArgumentOutOfRangeException(nameof(options), options.DegreesOfFreedom, "Not a choice of degrees of freedom."),
        };
        var criterion = options.Criterion == MixedCriterion.Reml ? "REML" : "ML";
        foreach (var term in singular)
            notes.Add($"Singular fit: {data.Terms[term].Levels.Length} groups of '{design.RandomTerms[term].Name}' show a random effect without variance, or a correlation of ±1; its estimate lies on the boundary.");
        var whole = new MixedKernel(data);
        whole.Evaluate(search.Theta);
        var (effects, sds, squared) = whole.RandomEffects();
        return new MixedFit(inference)
        {
            Design = design,
            Criterion = options.Criterion,
            ConfidenceLevel = options.ConfidenceLevel,
            FixedEffects = [.. design.FixedEffects.Select((column, j) => new FixedEffect(column.Name, FixedEstimate(beta[j], column.CoefficientUnit, n, $"linear mixed model, {criterion}, {inference.Name}", inference, UnitRow(p, j), options.ConfidenceLevel)))],
            FixedCovariance = [.. Enumerable.Range(0, p).Select(i => (IReadOnlyList<double>)[.. Enumerable.Range(0, p).Select(j => inference.Covariance[i, j])])],
            VarianceComponents = Components(design, data, search.Theta, sigma, criterion),
            Correlations = CorrelationsOf(design, data, search.Theta),
            ResidualStandardDeviation = new Estimate(sigma, design.Response.CoefficientUnit, n, $"linear mixed model, {criterion}"),
            RandomEffects = Predictions(design, data, effects, sds, sigma),
            Theta = Unscaled(data, search.Theta),
            Deviance = search.Deviance,
            Parameters = p + data.ThetaCount + 1,
            Observations = n,
            ResidualSumOfSquares = whole.Rss - squared,
            IsSingular = singular.Count > 0,
            Evaluations = deviance.Kernel.Evaluations,
            Notes = [.. notes],
        };
    }

    private static double[] UnitRow(int length, int position)
    {
        var row = new double[length];
        row[position] = 1;
        return row;
    }
}
