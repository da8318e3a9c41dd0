using SquadAnalytics.Import;

namespace SquadAnalytics.Tests.Import;

/// <summary>An invented squad and short ways to import a text.</summary>
internal static class ImportTexts
{
    public static readonly Protocol Quay = new("quay-v1", "Quay circuit", [new Station("burpees", 8), new Station("squats", 15), new Station("planks", 4)], 4, new Seconds(120));

    public static readonly Protocol QuayJuniors = new("quay-v1-j", "Quay circuit juniors", [new Station("burpees", 6), new Station("squats", 10), new Station("planks", 3)], 4, new Seconds(120)) { VariantOf = "quay-v1" };

    public static readonly Athlete Bo = new("a1", "Bo Lindqvist", "BL");

    public static readonly Athlete Zoe = new("a2", "Zoë Brandér", "ZB");

    public static readonly Squad Squad = new("Quay", [Bo, Zoe], [Quay, QuayJuniors], []);

    public static readonly ImportOptions Known = new() { Squad = Squad };

    public static readonly DateOnly Date = new(2031, 3, 4);

    public static ImportResult Read(string text, ImportOptions? options = null)
    {
        var result = ClipboardImport.Read(ImportSource.FromText("clip.csv", text), options);
        AssertAccounted(result);
        return result;
    }

    public static ImportOptions Answering(this ImportOptions options, params IReadOnlyList<string> idsAndChoices) =>
        options with { Answers = [.. idsAndChoices.Chunk(2).Select(pair => new DecisionAnswer(pair[0], pair[1]))] };

    public static double?[] Times(Session session) => [.. session.Sets.Select(set => set.Work?.Value)];

    public static void AssertAccounted(ImportResult result)
    {
        var report = result.Report;
        Assert.Equal(report.Rows, report.Kept + report.RefusedRows + report.DecisionRows);
        Assert.All(report.Refused, row => Assert.NotEmpty(row.Problems));
        Assert.All(report.Held, row => Assert.NotEmpty(row.DecisionIds));
        Assert.Equal(report.Held.Select(row => row.Place).Order(PlaceOrder), result.Decisions.SelectMany(decision => decision.Rows).Distinct().Order(PlaceOrder));
        Assert.Equal(report.Held.SelectMany(row => row.DecisionIds).ToHashSet(), result.Decisions.Select(decision => decision.Id).ToHashSet());
    }

    private static readonly Comparer<RowPlace> PlaceOrder = Comparer<RowPlace>.Create((left, right) =>
        (left.File, left.Sheet ?? "", left.Line).CompareTo((right.File, right.Sheet ?? "", right.Line)));
}
