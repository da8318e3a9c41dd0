namespace SquadAnalytics.Tests.Reliability;

/// <summary>Tables of subjects by trials of the reference pack, as sessions.</summary>
internal static class ReferenceTable
{
    /// <summary>One row per subject, one number per trial.</summary>
    public static IReadOnlyList<IReadOnlyList<double>> Load(string item)
    {
        var subject = ReferenceData.Column("reliability", item + ".csv", "subject");
        var trial = ReferenceData.Column("reliability", item + ".csv", "trial");
        var value = ReferenceData.Column("reliability", item + ".csv", "value");
        return [.. Enumerable.Range(0, value.Length).GroupBy(i => subject[i]).OrderBy(own => own.Key).Select(own => (IReadOnlyList<double>)[.. own.OrderBy(i => trial[i]).Select(i => value[i])])];
    }

    /// <summary>The table as weekly sessions whose totals are the values.</summary>
    public static IReadOnlyList<Session> Sessions(IReadOnlyList<IReadOnlyList<double>> table) => WorkedData.Weekly([.. table.Select(row => row.ToArray())]);
}
