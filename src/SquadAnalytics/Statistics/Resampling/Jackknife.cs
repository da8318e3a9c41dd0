namespace SquadAnalytics.Statistics;

/// <summary>The jackknife: what a statistic owes to each observation, and its standard error, bias and acceleration.</summary>
/// <remarks>
/// Exact, without random numbers. Assumes a statistic that changes smoothly with the data (not a median or a quantile). Takes as many
/// evaluations as there are units, so that time grows with their square at least: at most 5,000 units.
/// Sources: Efron and Tibshirani (1993), An Introduction to the Bootstrap; Davison and Hinkley (1997), Bootstrap Methods and their
/// Application (both from memory).
/// </remarks>
public static class Jackknife
{
    private const int MostUnits = 5_000;

    /// <summary>Leaves out one number after another.</summary>
    /// <param name="values">The numbers, independent of each other.</param>
    /// <param name="statistic">The statistic of a sample.</param>
    /// <returns>The jackknife, or <see cref="Refusal.TooFewObservations"/> below three numbers, <see cref="Refusal.TooManyObservations"/> above 5,000, <see cref="Refusal.ZeroVariance"/> where the statistic, of all or with one left out, is not a finite number.</returns>
    public static Answer<JackknifeResult> Of(IReadOnlyList<double> values, Func<IReadOnlyList<double>, double> statistic)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        var sample = Numbers.Of(values, 0);
        return OfRows(sample.Length, rows => statistic(rows.Select(row => sample[row]).ToArray()));
    }

    /// <summary>Leaves out one row after another of a table that the statistic knows.</summary>
    /// <param name="rows">How many rows.</param>
    /// <param name="statistic">The statistic of the rows with these numbers, from 0.</param>
    /// <returns>The jackknife, or <see cref="Refusal.TooFewObservations"/> below three rows, <see cref="Refusal.TooManyObservations"/> above 5,000, <see cref="Refusal.ZeroVariance"/> where the statistic, of all or with one left out, is not a finite number.</returns>
    public static Answer<JackknifeResult> OfRows(int rows, Func<IReadOnlyList<int>, double> statistic)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        return Run(ResamplingUnits.Rows(rows), statistic);
    }

    /// <summary>Leaves out one cluster (for example an athlete with all sessions) after another.</summary>
    /// <param name="clusters">The cluster of each row.</param>
    /// <param name="statistic">The statistic of the rows with these numbers, from 0.</param>
    /// <returns>The jackknife, or <see cref="Refusal.TooFewObservations"/> below three clusters, <see cref="Refusal.TooManyObservations"/> above 5,000, <see cref="Refusal.ZeroVariance"/> where the statistic, of all or with one left out, is not a finite number.</returns>
    public static Answer<JackknifeResult> OfClusters(IReadOnlyList<string> clusters, Func<IReadOnlyList<int>, double> statistic)
    {
        ArgumentNullException.ThrowIfNull(statistic);
        return Run(ResamplingUnits.Clusters(clusters), statistic);
    }

    internal static Answer<JackknifeResult> Run(ResamplingUnits units, Func<IReadOnlyList<int>, double> statistic)
    {
        var n = units.Count;
        if (n < 3) return new NotEstimable("the jackknife", Refusal.TooFewObservations, 3, n, units.Noun);
        if (n > MostUnits) return NotEstimable.TooMany("the jackknife", MostUnits, n, units.Noun);
        var all = statistic(units.All);
        if (!double.IsFinite(all)) return new NotEstimable("the jackknife", Refusal.ZeroVariance, "a statistic that is a finite number", "one that is not");
        var leftOut = new double[n];
        for (var i = 0; i < n; i++)
        {
            leftOut[i] = statistic(units.Without(i));
            if (!double.IsFinite(leftOut[i]))
                return new NotEstimable("the jackknife", Refusal.ZeroVariance, "a statistic that is a finite number whichever observation is left out", "one that is not");
        }

        var mean = Descriptive.Mean(leftOut);
        double squares = 0, cubes = 0;
        foreach (var value in leftOut)
        {
            var influence = (n - 1) * (mean - value);
            squares += influence * influence;
            cubes += influence * influence * influence;
        }

        var acceleration = squares > 0 ? cubes / (6 * Math.Pow(squares, 1.5)) : 0;
        return new JackknifeResult(all, leftOut, Math.Sqrt(squares / n / (n - 1)), (n - 1) * (mean - all), acceleration);
    }
}
