using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Several measured values whose true values are normal about a common mean: what is known of each true value, mean and spread being unknown too.</summary>
/// <remarks>
/// D_i ~ N(θ_i, s_i²), θ_i ~ N(μ, ω²), flat on μ and on ω &gt;= 0 (Gelman 2006, Bayesian Analysis 1:515-534, from memory). The posterior of ω is
/// taken on a grid; given ω each θ_i is normal, so that its distribution is a weighted sum of normal ones. Needs 4 or more values.
/// </remarks>
internal sealed class NormalHierarchy
{
    private const int GridPoints = 160;
    private readonly double[] _shares;
    private readonly double[][] _means;
    private readonly double[][] _deviations;

    public NormalHierarchy(double[] values, double[] standardErrors)
    {
        Require.AtLeast(4, values.Length);
        _means = new double[GridPoints][];
        _deviations = new double[GridPoints][];
        var logs = new double[GridPoints];
        var unit = Math.Max(Descriptive.StandardDeviation(values), standardErrors.Max());
        for (var point = 0; point < GridPoints; point++)
        {
            // ω = unit · u / (1 - u) for u in the middle of equal steps from 0 to 1.
            var u = (point + 0.5) / GridPoints;
            var spread = unit * u / (1 - u);
            logs[point] = Given(point, spread * spread, values, standardErrors) - 2 * Math.Log(1 - u);
        }

        var largest = logs.Max();
        double[] weights = [.. logs.Select(log => Math.Exp(log - largest))];
        _shares = [.. weights.Select(weight => weight / weights.Sum())];
    }

    /// <summary>Posterior mean of a true value.</summary>
    public double Mean(int index) => _shares.Select((share, point) => share * _means[point][index]).Sum();

    /// <summary>Posterior standard deviation of a true value.</summary>
    public double Deviation(int index)
    {
        var mean = Mean(index);
        return Math.Sqrt(_shares.Select((share, point) => share * (Math.Pow(_deviations[point][index], 2) + Math.Pow(_means[point][index] - mean, 2))).Sum());
    }

    /// <summary>Posterior probability that a true value is at most so much.</summary>
    public double Cdf(int index, double value) =>
        Math.Clamp(_shares.Select((share, point) => share * NormalDistribution.Cdf((value - _means[point][index]) / _deviations[point][index])).Sum(), 0, 1);

    /// <summary>The value that a true value stays below with a probability.</summary>
    public double Quantile(int index, double probability) =>
        BracketedRoot.FindRising(value => Cdf(index, value) - probability, Mean(index), Deviation(index), 1e-12 * Deviation(index));

    /// <summary>Fills the conditional means and deviations of one ω² and gives the log of its marginal likelihood.</summary>
    private double Given(int point, double variance, double[] values, double[] standardErrors)
    {
        double[] total = [.. standardErrors.Select(error => variance + error * error)];
        var precision = total.Sum(one => 1 / one);
        var centre = values.Zip(total, (value, one) => value / one).Sum() / precision;
        double[] own = [.. total.Select(one => variance / one)];
        _means[point] = [.. values.Select((value, i) => own[i] * value + (1 - own[i]) * centre)];
        _deviations[point] = [.. own.Select((share, i) => Math.Sqrt(share * standardErrors[i] * standardErrors[i] + (1 - share) * (1 - share) / precision))];
        return -0.5 * (total.Sum(one => Math.Log(one)) + Math.Log(precision) + values.Zip(total, (value, one) => (value - centre) * (value - centre) / one).Sum());
    }
}
