namespace SquadAnalytics.Statistics;

/// <summary>Weighted sums at a given τ², and the estimators of τ².</summary>
internal sealed class BetweenVariance
{
    private const int GridPoints = 80;

    private readonly double[] _effects;
    private readonly double[] _variances;

    public BetweenVariance(double[] effects, double[] variances)
    {
        _effects = effects;
        _variances = variances;
    }

    /// <summary>Sums of the weights w = 1/(v + τ²), their squares and cubes, the weighted mean and the weighted squares about it.</summary>
    internal sealed record Sums(double Weight, double Squared, double Cubed, double Mean, double Q, double SquaredQ, double LogVariances)
    {
        /// <summary>Σw - Σw²/Σw.</summary>
        public double TraceP => Weight - Squared / Weight;

        /// <summary>Trace of the square of the residual weight matrix.</summary>
        public double TracePP => Squared - 2 * Cubed / Weight + Squared / Weight * (Squared / Weight);
    }

    public Sums At(double tauSquared)
    {
        double weight = 0, squared = 0, cubed = 0, product = 0, logs = 0;
        for (var i = 0; i < _effects.Length; i++)
        {
            var w = 1 / (_variances[i] + tauSquared);
            weight += w;
            squared += w * w;
            cubed += w * w * w;
            product += w * (_effects[i] - _effects[0]);
            logs -= Math.Log(w);
        }

        var mean = _effects[0] + product / weight;
        double q = 0, squaredQ = 0;
        for (var i = 0; i < _effects.Length; i++)
        {
            var w = 1 / (_variances[i] + tauSquared);
            var deviation = _effects[i] - mean;
            q += w * deviation * deviation;
            squaredQ += w * w * deviation * deviation;
        }

        return new Sums(weight, squared, cubed, mean, q, squaredQ, logs);
    }

    /// <summary>τ² and its standard error (null where all true effects are taken to be equal).</summary>
    public (double TauSquared, double? StandardError) Estimate(BetweenVarianceEstimator estimator)
    {
        var k = _effects.Length;
        switch (estimator)
        {
            case BetweenVarianceEstimator.EqualEffects:
                return (0, null);
            case BetweenVarianceEstimator.DerSimonianLaird:
                var plain = At(0);
                var moment = Math.Max(0, (plain.Q - (k - 1)) / plain.TraceP);
                return (moment, Math.Sqrt(2 * (k - 1) + 4 * moment * plain.TraceP + 2 * moment * moment * plain.TracePP) / plain.TraceP);
            case BetweenVarianceEstimator.PauleMandel:
                var matched = AtQ(k - 1) ?? 0;
                return (matched, Math.Sqrt(2.0 * k * k / (k - 1)) / At(matched).Weight);
            case BetweenVarianceEstimator.MaximumLikelihood:
                var maximum = Maximum(restricted: false);
                return (maximum, Math.Sqrt(2 / At(maximum).Squared));
            case BetweenVarianceEstimator.Reml:
                var restricted = Maximum(restricted: true);
                return (restricted, Math.Sqrt(2 / At(restricted).TracePP));
            default:
                throw new ArgumentOutOfRangeException(nameof(estimator), estimator, "Not an estimator of the variance between effects.");
        }
    }

    /// <summary>The τ² at which Q falls to a value, or null where it is below that at 0 already.</summary>
    public double? AtQ(double target)
    {
        if (At(0).Q <= target) return null;
        var upper = Scale();
        while (At(upper).Q > target) upper *= 2;
        return BracketedRoot.Find(tauSquared => At(tauSquared).Q - target, 0, upper);
    }

    /// <summary>
    /// The likelihood can have more than one peak, so a grid is searched first and every peak of it refined by the root of the derivative.
    /// </summary>
    private double Maximum(bool restricted)
    {
        double Score(double tauSquared)
        {
            var sums = At(tauSquared);
            return (sums.SquaredQ - (restricted ? sums.TraceP : sums.Weight)) / 2;
        }

        double LogLikelihood(double tauSquared)
        {
            var sums = At(tauSquared);
            return -(sums.LogVariances + sums.Q + (restricted ? Math.Log(sums.Weight) : 0)) / 2;
        }

        // Beyond this the derivative is negative: the weights are then all but equal.
        var largest = Scale();
        while (Score(largest) > 0) largest *= 2;
        var (best, bestValue) = (0.0, LogLikelihood(0));
        var left = 0.0;
        var leftScore = Score(0);
        for (var k = 1; k <= GridPoints; k++)
        {
            var right = largest * k * k / (GridPoints * GridPoints);
            var rightScore = Score(right);
            if (leftScore > 0 && rightScore <= 0)
            {
                var peak = BracketedRoot.Find(Score, left, right);
                if (LogLikelihood(peak) is var value && value > bestValue) (best, bestValue) = (peak, value);
            }

            (left, leftScore) = (right, rightScore);
        }

        return best;
    }

    private double Scale() => Descriptive.Variance(_effects) + Descriptive.Mean(_variances);
}
