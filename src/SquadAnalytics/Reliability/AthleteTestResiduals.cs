using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Residuals of least squares with athlete and test effects, absences allowed: athletes are swept out first, so time grows with the number of values.</summary>
internal sealed record AthleteTestResiduals(double SumOfSquares, int DegreesOfFreedom, int Observations, IReadOnlyList<AthleteSumOfSquares> ByAthlete)
{
    /// <summary>Fits one window; null where it holds no athlete with two tests or leaves no degree of freedom.</summary>
    public static AthleteTestResiduals? Of(IReadOnlyList<TestValue> window)
    {
        var repeated = window.GroupBy(value => value.Athlete, StringComparer.Ordinal).Where(own => own.Count() > 1).OrderBy(own => own.Key, StringComparer.Ordinal).Select(own => own.ToArray()).ToList();
        if (repeated.Count == 0) return null;
        var tests = repeated.SelectMany(own => own).Select(value => value.Test).Distinct().Order().ToArray();
        double[] y = [.. repeated.SelectMany(own => Centred(own, value => value.Value))];
        var design = RegressionDesign.WithoutIntercept(y.Length);
        foreach (var test in tests.Skip(1))
            design = design.Add($"test {test}", [.. repeated.SelectMany(own => Centred(own, value => value.Test == test ? 1 : 0))]);
        var fit = LeastSquares.Fit(y, design).GetOrThrow();
        var df = y.Length - repeated.Count - fit.Rank;
        if (df < 1) return null;
        var first = 0;
        var byAthlete = new List<AthleteSumOfSquares>();
        foreach (var own in repeated)
        {
            byAthlete.Add(new AthleteSumOfSquares(own[0].Athlete, fit.Residuals.Skip(first).Take(own.Length).Sum(residual => residual * residual)));
            first += own.Length;
        }

        return new AthleteTestResiduals(fit.ResidualSumOfSquares, df, y.Length, byAthlete);
    }

    private static IEnumerable<double> Centred(TestValue[] own, Func<TestValue, double> value)
    {
        var mean = own.Average(value);
        return own.Select(one => value(one) - mean);
    }
}

/// <summary>What one athlete contributes to the residual sum of squares.</summary>
internal readonly record struct AthleteSumOfSquares(string Athlete, double SumOfSquares);
