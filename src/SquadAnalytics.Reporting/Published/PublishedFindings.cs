namespace SquadAnalytics.Reporting.Published;

/// <summary>What came of holding numbers against printed ones.</summary>
public static class PublishedFindings
{
    /// <summary>How many agree, and each one that does not.</summary>
    /// <param name="checks">The comparisons; at least one.</param>
    /// <exception cref="ArgumentException">There is no comparison.</exception>
    public static Findings Of(params IReadOnlyList<PublishedCheck> checks)
    {
        ArgumentNullException.ThrowIfNull(checks);
        if (checks.Count == 0) throw new ArgumentException("There is nothing to compare.", nameof(checks));
        var sets = checks.Select(check => check.Published.Data).Distinct(StringComparer.Ordinal).Count();
        var apart = checks.Where(check => !check.Agrees).ToList();
        return new Findings(
        [
            new Finding(apart.Count == 0
                ? $"All {checks.Count} numbers of {sets} published data sets agree with what was printed."
                : $"{checks.Count - apart.Count} of {checks.Count} numbers of {sets} published data sets agree with what was printed, {apart.Count} do not.")
            {
                Method = "differing by at most half a unit of the last digit asked for",
            },
            .. apart.Select(check => new Finding($"{check.Published.Data}: {check}.") { Source = check.Published.Source }),
        ]);
    }
}
