namespace SquadAnalytics.Statistics;

/// <summary>The profiled deviance of one model: minus twice the log-likelihood (or restricted log-likelihood) with β and σ at their best for θ.</summary>
/// <remarks>
/// ML: log|ΛZ'ZΛ+I| + n(1 + log(2πr²/n)). REML: log|ΛZ'ZΛ+I| + log|X'V⁻¹X| + m(1 + log(2πr²/m)), m = n - p.
/// Sources: Patterson and Thompson (1971), Biometrika 58:545-554; Bates et al. (2015), J Stat Softw 67(1) (both from memory).
/// </remarks>
internal sealed class MixedDeviance
{
    private readonly double _logDetColumns;

    public MixedDeviance(MixedBlocks data, OrthonormalColumns columns, MixedCriterion criterion)
    {
        Data = data;
        Columns = columns;
        Criterion = criterion;
        Kernel = new MixedKernel(data.Merged());
        Divisor = criterion == MixedCriterion.Reml ? data.Observations - data.FixedCount : data.Observations;
        var p = data.FixedCount;
        for (var j = 0; j < p; j++) _logDetColumns += 2 * Math.Log(columns.Triangle[j * p + j]);
    }

    /// <summary>The blocks as they are, one for each group or connected groups.</summary>
    public MixedBlocks Data { get; }

    public OrthonormalColumns Columns { get; }

    public MixedCriterion Criterion { get; }

    /// <summary>Evaluates on the merged blocks.</summary>
    public MixedKernel Kernel { get; }

    /// <summary>n for ML, n - p for REML.</summary>
    public int Divisor { get; }

    /// <summary>log determinants at the point last evaluated, that of the columns' own scale included.</summary>
    public double LogDeterminants => Criterion == MixedCriterion.Reml ? Kernel.LogDetZ + Kernel.LogDetX + _logDetColumns : Kernel.LogDetZ;

    /// <summary>σ² at the point last evaluated.</summary>
    public double ResidualVariance => Kernel.Rss / Divisor;

    /// <summary>The deviance at θ, without its gradient.</summary>
    public double Value(ReadOnlySpan<double> theta)
    {
        Kernel.Evaluate(theta);
        return Current;
    }

    /// <summary>The deviance at θ and its gradient.</summary>
    public double Value(ReadOnlySpan<double> theta, Span<double> gradient)
    {
        Kernel.Evaluate(theta);
        Kernel.EvaluateGradient();
        for (var j = 0; j < gradient.Length; j++)
            gradient[j] = LogDeterminantGradient(j) + Divisor / Kernel.Rss * Kernel.RssGradient[j];
        return Current;
    }

    public double LogDeterminantGradient(int j) =>
        Criterion == MixedCriterion.Reml ? Kernel.LogDetZGradient[j] + Kernel.LogDetXGradient[j] : Kernel.LogDetZGradient[j];

    private double Current => LogDeterminants + Divisor * (1 + Math.Log(2 * Math.PI * ResidualVariance));
}
