namespace SquadAnalytics.Tests.Statistics;

/// <summary>The two groups of the reference pack's comparisons: x is the reference group, y the compared one.</summary>
internal static class TwoGroups
{
    public static (double[] X, double[] Y) Of(string item)
    {
        if (item == "sleep_paired") return (ReferenceData.Column("comparison", item + ".csv", "x"), ReferenceData.Column("comparison", item + ".csv", "y"));
        var group = ReferenceData.Text("comparison", item + ".csv")["group"];
        double[] Column(string name) => ReferenceData.Column("comparison", item + ".csv", name);
        var value = item == "individual_response" ? [.. Column("post").Zip(Column("pre"), (post, pre) => post - pre)] : Column("value");
        double[] In(string name) => [.. value.Where((_, i) => group[i] == name)];
        return item switch
        {
            "toothgrowth_dose05" => (In("VC"), In("OJ")),
            "insectsprays" => (In("A"), In("B")),
            _ => (In("FT"), In("CBT")),
        };
    }
}
