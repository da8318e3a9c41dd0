using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>A one-sided t test, or two that must both succeed, of a difference d: non-centrality d / SE.</summary>
internal sealed record TestOfDifference
{
    /// <summary>Standard error of the estimated difference from the noise of one test and the number of further tests; one per test.</summary>
    public required IReadOnlyList<Func<double, int, double>> StandardErrors { get; init; }

    /// <summary>Degrees of freedom by further tests; below 1 where there is no test.</summary>
    public required Func<int, double> DegreesOfFreedom { get; init; }

    /// <summary>Fewest further tests at which the question can be asked.</summary>
    public int Fewest { get; init; } = 1;

    /// <summary>P(T > t) of the noncentral t; for two tests the bound 1 - Σ (1 - P), below which the chance of both cannot lie.</summary>
    public double Power(double difference, double noise, int further, ConfidenceLevel level)
    {
        var df = DegreesOfFreedom(further);
        var critical = StudentTDistribution.UpperQuantile(level.Alpha / 2, df);
        return Math.Max(0, 1 - StandardErrors.Sum(error => 1 - NoncentralTDistribution.UpperTail(critical, df, difference / error(noise, further))));
    }

    /// <summary>The difference that is told with the chance that is wanted.</summary>
    public double Smallest(double noise, int further, MoreTestsOptions options)
    {
        if (options.Wanted <= options.Level.Alpha / 2)
            throw new ArgumentOutOfRangeException(nameof(options), options.Wanted, FormattableString.Invariant($"The chance that is wanted must be above the rate of false alarms {options.Level.Alpha / 2:0.###}."));
        var scale = StandardErrors.Max(error => error(noise, further));
        return scale * BracketedRoot.FindRising(size => Power(Math.Max(0, size) * scale, noise, further, options.Level) - options.Wanted, 2, 1, 1e-12);
    }
}
