using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>What is drawn as a whole: single rows, or clusters of rows.</summary>
internal sealed class ResamplingUnits
{
    private readonly int[][] _members;

    private ResamplingUnits(int[][] members, string noun)
    {
        _members = members;
        Noun = noun;
        All = [.. members.SelectMany(rows => rows)];
    }

    /// <summary>How many units.</summary>
    public int Count => _members.Length;

    /// <summary>What a unit is called in a refusal.</summary>
    public string Noun { get; }

    /// <summary>All rows, unit by unit.</summary>
    public int[] All { get; }

    public static ResamplingUnits Rows(int rows) =>
        new([.. Enumerable.Range(0, Require.AtLeast(0, rows)).Select(row => new[] { row })], "observations");

    public static ResamplingUnits Clusters(IReadOnlyList<string> clusters)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        return new([.. clusters.Select((cluster, row) => (cluster, row)).GroupBy(pair => pair.cluster, pair => pair.row, StringComparer.Ordinal).Select(rows => rows.ToArray())], "clusters");
    }

    /// <summary>The rows of all units but one.</summary>
    public int[] Without(int unit) => [.. _members.Where((_, k) => k != unit).SelectMany(rows => rows)];

    /// <summary>Draws as many units as there are, with replacement.</summary>
    public IReadOnlyList<int> Draw(SeededRandom random, int[] fixedLength, List<int> anyLength)
    {
        var n = Count;
        if (All.Length == n)
        {
            for (var k = 0; k < n; k++) fixedLength[k] = _members[random.NextIndex(n)][0];
            return fixedLength;
        }

        anyLength.Clear();
        for (var k = 0; k < n; k++) anyLength.AddRange(_members[random.NextIndex(n)]);
        return anyLength;
    }
}
