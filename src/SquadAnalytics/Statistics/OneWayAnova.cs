using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>One-way analysis of variance: do group means differ by more than the scatter within groups?</summary>
/// <remarks>In the unit of the observations. Assumes independent observations of equal variance. The data are centred first, so a large common mean costs no digits.</remarks>
public sealed record OneWayAnova
{
    private OneWayAnova(IReadOnlyList<GroupSummary> groups, double between, double within, int observations)
    {
        Groups = groups;
        Observations = observations;
        var df = observations - groups.Count;
        Between = AnovaRow.Tested("groups", groups.Count - 1, between, within / df, df);
        Within = AnovaRow.Residual(within, df);
        ResidualStandardDeviation = Math.Sqrt(within / df);
        RSquared = between + within > 0 ? between / (between + within) : null;
    }

    /// <summary>The groups, in ordinal order of their names.</summary>
    public IReadOnlyList<GroupSummary> Groups { get; }

    /// <summary>All observations.</summary>
    public int Observations { get; }

    /// <summary>The line between groups, with F and p.</summary>
    public AnovaRow Between { get; }

    /// <summary>The line within groups.</summary>
    public AnovaRow Within { get; }

    /// <summary>Residual (pooled within-group) standard deviation.</summary>
    public double ResidualStandardDeviation { get; }

    /// <summary>Share of the sum of squares between groups, or null where all observations are equal.</summary>
    public double? RSquared { get; }

    /// <summary>Analyses observations by group.</summary>
    /// <remarks>F = MSB / MSW, MSB = Σ n_g (mean of group g - mean)² / (groups - 1), MSW the sum of squares about the groups' means over observations - groups. Source: Fisher (1925), Statistical methods for research workers (from memory).</remarks>
    /// <param name="values">The observations.</param>
    /// <param name="groups">The group of each.</param>
    /// <returns>The analysis, or <see cref="Refusal.TooFewObservations"/> below two groups or without a group of two.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<OneWayAnova> Fit(IReadOnlyList<double> values, IReadOnlyList<string> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var y = Numbers.Of(values);
        if (y.Length != groups.Count)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"groups must be as long as values: {groups.Count} against {y.Length}."), nameof(groups));
        var centre = Descriptive.MeanOf(y);
        var parts = y.Select(value => value - centre).Zip(groups).GroupBy(pair => pair.Second, pair => pair.First, StringComparer.Ordinal)
            .OrderBy(part => part.Key, StringComparer.Ordinal).Select(part => (Name: part.Key, Values: part.ToArray())).ToArray();
        if (parts.Length < 2) return new NotEstimable("the analysis of variance", Refusal.TooFewObservations, 2, parts.Length, "groups");
        if (y.Length <= parts.Length) return new NotEstimable("the analysis of variance", Refusal.TooFewObservations, parts.Length + 1, y.Length, "observations");
        var means = Array.ConvertAll(parts, part => Descriptive.MeanOf(part.Values));
        var grandMean = parts.Select((part, i) => part.Values.Length * means[i]).Sum() / y.Length;
        var between = CompensatedSum.Of([.. parts.Select((part, i) => part.Values.Length * (means[i] - grandMean) * (means[i] - grandMean))]);
        var squares = Array.ConvertAll(parts, part => Descriptive.SumOfSquares(part.Values));
        GroupSummary Summarize(int i) => new(
            parts[i].Name,
            parts[i].Values.Length,
            centre + means[i],
            parts[i].Values.Length > 1 ? Math.Sqrt(squares[i] / (parts[i].Values.Length - 1)) : null);
        return new OneWayAnova([.. Enumerable.Range(0, parts.Length).Select(Summarize)], between, CompensatedSum.Of(squares), y.Length);
    }

    /// <summary>Both lines of the table.</summary>
    public override string ToString() => $"{Between}; {Within}";
}
