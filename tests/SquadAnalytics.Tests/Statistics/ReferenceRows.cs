
namespace SquadAnalytics.Tests.Statistics;

/// <summary>Row by row comparison with a block of the reference pack, to the tolerance that the block states.</summary>
internal static class ReferenceRows
{
    /// <summary>Compares the numbers of one column of every row; null expectations are the caller's business.</summary>
    public static void AssertColumn(string folder, string item, string block, string column, Func<ReferenceValue, double> got)
    {
        var (relative, absolute) = Tolerance(ReferenceData.Results(folder, item, block));
        AssertColumn(folder, item, block, column, relative, absolute, got);
    }

    /// <summary>The same with a tolerance other than the block's, where the reference itself is less exact than it says.</summary>
    public static void AssertColumn(string folder, string item, string block, string column, double relative, double absolute, Func<ReferenceValue, double> got)
    {
        var results = ReferenceData.Results(folder, item, block);
        var rows = 0;
        foreach (var row in results.GetProperty("values").EnumerateArray())
        {
            ReferenceData.AssertClose(row.Number(column), got(row), relative, absolute, $"{block}.{column} of {row}");
            rows++;
        }

        Assert.True(rows > 0, $"{block} has no rows");
    }

    /// <summary>Compares one number of a block whose values are one object.</summary>
    public static void AssertValue(string folder, string item, string block, string name, double got)
    {
        var results = ReferenceData.Results(folder, item, block);
        var (relative, absolute) = Tolerance(results);
        ReferenceData.AssertClose(results.GetProperty("values").Number(name), got, relative, absolute, $"{item} {block}.{name}");
    }

    /// <summary>The relative tolerance of a block and its alternative absolute one (0 where there is none).</summary>
    public static (double Relative, double Absolute) Tolerance(ReferenceValue results)
    {
        var tolerance = results.GetProperty("tolerance");
        return (tolerance.Number("relative"), tolerance.TryGetProperty("absolute", out var absolute) ? absolute.GetDouble() : 0);
    }
}
