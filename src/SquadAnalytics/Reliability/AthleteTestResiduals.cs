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
        var (residuals, rank) = repeated.TrueForAll(own => own.Length == tests.Length && own.Select(value => value.Test).Distinct().Count() == tests.Length)
            ? (LessTestMeans(repeated, y, tests), tests.Length - 1)
            : Fitted(repeated, y, tests);
        var df = y.Length - repeated.Count - rank;
        if (df < 1) return null;
        var first = 0;
        var byAthlete = new AthleteSumOfSquares[repeated.Count];
        for (var i = 0; i < byAthlete.Length; i++)
        {
            var own = residuals.AsSpan(first, repeated[i].Length);
            byAthlete[i] = new AthleteSumOfSquares(repeated[i][0].Athlete, CompensatedSum.OfProducts(own, own));
            first += own.Length;
        }

        return new AthleteTestResiduals(CompensatedSum.OfProducts(residuals, residuals), df, y.Length, byAthlete);
    }

    /// <summary>Where everybody took every test, the test effects are the means of the values centred by athlete.</summary>
    private static double[] LessTestMeans(List<TestValue[]> repeated, double[] centred, int[] tests)
    {
        var places = tests.Index().ToDictionary(test => test.Item, test => test.Index);
        int[] columns = [.. repeated.SelectMany(own => own.Select(value => places[value.Test]))];
        var sums = new CompensatedSum[tests.Length];
        for (var i = 0; i < centred.Length; i++) sums[columns[i]].Add(centred[i]);
        return [.. centred.Select((value, i) => value - sums[columns[i]].Value / repeated.Count)];
    }

    private static (double[] Residuals, int Rank) Fitted(List<TestValue[]> repeated, double[] centred, int[] tests)
    {
        var design = RegressionDesign.WithoutIntercept(centred.Length);
        foreach (var test in tests.Skip(1))
            design = design.Add($"test {test}", [.. repeated.SelectMany(own => Centred(own, value => value.Test == test ? 1 : 0))]);
        var fit = LeastSquares.Fit(centred, design).GetOrThrow();
        return ([.. fit.Residuals], fit.Rank);
    }

    private static IEnumerable<double> Centred(TestValue[] own, Func<TestValue, double> value)
    {
        var mean = own.Average(value);
        return own.Select(one => value(one) - mean);
    }
}

/// <summary>What one athlete contributes to the residual sum of squares.</summary>
internal readonly record struct AthleteSumOfSquares(string Athlete, double SumOfSquares);
