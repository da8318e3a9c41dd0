using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Tabular cumulative sums: how far a series has run above or below a target, small wanderings forgiven.</summary>
/// <param name="Upper">C⁺_t = max(0, C⁺_(t-1) + y_t - target - k σ).</param>
/// <param name="Lower">C⁻_t = max(0, C⁻_(t-1) + target - y_t - k σ).</param>
/// <param name="Signals">Positions, counted from 0, where either sum is beyond h σ.</param>
/// <remarks>In the unit of the series. Page (1954), Biometrika 41:100-115 (from memory). With k = 0.5 and h = 5 a shift of 1 σ is found after about ten values.</remarks>
public sealed record TabularCusum(IReadOnlyList<double> Upper, IReadOnlyList<double> Lower, IReadOnlyList<int> Signals)
{
    /// <summary>Sums a series up.</summary>
    /// <remarks>Assumes independent values with a known target and spread.</remarks>
    /// <param name="values">The series in time order.</param>
    /// <param name="target">The level it should keep.</param>
    /// <param name="sigma">Standard deviation of one value.</param>
    /// <param name="allowance">k, the wandering that is forgiven, in σ; 0.5 by default.</param>
    /// <param name="decision">h, where a signal is given, in σ; 5 by default.</param>
    /// <exception cref="ArgumentException">A number is not finite or out of range.</exception>
    public static TabularCusum Fit(IReadOnlyList<double> values, double target, double sigma, double allowance = 0.5, double decision = 5)
    {
        var y = Numbers.Of(values, 0);
        Require.Finite(target);
        var (slack, limit) = (Require.Positive(allowance) * Require.Positive(sigma), Require.Positive(decision) * sigma);
        double[] Run(int direction)
        {
            var sum = 0.0;
            return Array.ConvertAll(y, value => sum = Math.Max(0, sum + direction * (value - target) - slack));
        }

        var (upper, lower) = (Run(1), Run(-1));
        return new TabularCusum(upper, lower, [.. Enumerable.Range(0, y.Length).Where(i => upper[i] > limit || lower[i] > limit)]);
    }
}
