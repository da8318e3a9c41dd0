namespace SquadAnalytics.Statistics;

/// <summary>A weighted sum of t distributions: what is known of a value where something behind it is known by weights only.</summary>
internal sealed class TMixture
{
    private readonly Part[] _parts;
    private readonly double _df;

    /// <param name="parts">The distributions; their weights sum to 1.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom that all share; infinite for normal distributions.</param>
    public TMixture(IEnumerable<Part> parts, double degreesOfFreedom)
    {
        (_parts, _df) = ([.. parts], degreesOfFreedom);
        Mean = _parts.Sum(part => part.Weight * part.Centre);
        var heavier = double.IsFinite(_df) ? _df / (_df - 2) : 1;
        Deviation = Math.Sqrt(_parts.Sum(part => part.Weight * (heavier * Math.Pow(part.Scale, 2) + Math.Pow(part.Centre - Mean, 2))));
    }

    /// <summary>The mean.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation.</summary>
    public double Deviation { get; }

    /// <summary>Probability of at most so much.</summary>
    public double Cdf(double value) => Math.Clamp(_parts.Sum(part => part.Weight * StudentTDistribution.Cdf((value - part.Centre) / part.Scale, _df)), 0, 1);

    /// <summary>The limits that hold the value with the probability of a level, as much left out on either side.</summary>
    public Interval Limits(ConfidenceLevel level) => new(Quantile(level.Alpha / 2), Quantile(level.UpperTailProbability), level);

    private double Quantile(double probability) =>
        Newton(probability) ?? BracketedRoot.FindRising(value => Cdf(value) - probability, Mean, Deviation, 1e-12 * Deviation);

    // A sum of bells is nearly a bell: from the quantile of the normal distribution three steps are enough, but for tails far out.
    private double? Newton(double probability)
    {
        const int steps = 12;
        var value = Mean + NormalDistribution.Quantile(probability) * Deviation;
        for (var step = 0; step < steps; step++)
        {
            var move = (probability - Cdf(value)) / Density(value);
            if (!(Math.Abs(move) < Deviation)) return null;
            value += move;

            // Quadratic: a move of 1e-7 deviations leaves an error of rounding only.
            if (Math.Abs(move) < 1e-7 * Deviation) return value;
        }

        return null;
    }

    private double Density(double value) => _parts.Sum(part => part.Weight * StudentTDistribution.Density((value - part.Centre) / part.Scale, _df) / part.Scale);

    /// <summary>One of the distributions.</summary>
    /// <param name="Weight">Its share of the probability.</param>
    /// <param name="Centre">Where it lies.</param>
    /// <param name="Scale">Its scale.</param>
    internal readonly record struct Part(double Weight, double Centre, double Scale);
}
