using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A statistic with each observation (or cluster) left out in turn.</summary>
/// <param name="Statistic">The statistic of all observations.</param>
/// <param name="LeftOut">The statistic without the first, the second, ... observation or cluster.</param>
/// <param name="StandardError">√((n-1)/n Σ(θ_i - θ̄)²), θ_i the left-out values.</param>
/// <param name="Bias">(n-1)(θ̄ - θ).</param>
/// <param name="Acceleration">Σl³/(6(Σl²)^1.5), l_i = (n-1)(θ̄ - θ_i): how the standard error changes with the level; 0 where the left-out values are all equal.</param>
public sealed record JackknifeResult(double Statistic, IReadOnlyList<double> LeftOut, double StandardError, double Bias, double Acceleration)
{
    /// <summary>The statistic with standard error and acceleration.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Statistic:0.00##}, jackknife standard error {StandardError:0.00##}, bias {Bias:0.00##}, acceleration {Acceleration:0.000}");
}
