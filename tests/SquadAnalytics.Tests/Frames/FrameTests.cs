using Microsoft.Data.Analysis;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Tests.Frames;

public sealed class FrameTests
{
    private static readonly Frame Bests = new(
        FrameColumn.OfTexts("code", ["AI", "BM"]),
        FrameColumn.OfNumbers("best_total_s", [321.4, null]),
        FrameColumn.OfIntegers("tests", [7, 0]),
        FrameColumn.OfDates("last_day", [new DateOnly(2031, 3, 4), null]),
        FrameColumn.OfFlags("is_junior", [true, false]));

    [Fact]
    public void A_column_knows_unit_and_words_by_its_name()
    {
        Assert.Equal("s", Bests["best_total_s"].Unit);
        Assert.Equal("best total", Bests["Best_Total_S"].Words);
        Assert.Null(Bests["tests"].Unit);
        Assert.Null(Bests["code"].Unit);
        Assert.Equal("%/set", FrameColumn.OfNumbers("slope_percent_per_set", [1]).Unit);
        Assert.Equal("2 rows: code, best_total_s, tests, last_day, is_junior", Bests.ToString());
    }

    [Fact]
    public void Rows_become_records_by_the_names_of_their_columns()
    {
        var rows = Bests.As<BestRow>();
        Assert.Equal(new BestRow("AI", 321.4, 7), rows[0]);
        Assert.Equal(new BestRow("BM", null, 0), rows[1]);
        Assert.Equal(new Seconds(321.4), Bests.First(1).As<TimeRow>()[0].BestTotalS);
        Assert.Contains("Row 2 of column best_total_s is empty", Assert.Throws<ArgumentException>(() => Bests.As<TimeRow>()).Message, StringComparison.Ordinal);
        Assert.Contains("asks for Age", Assert.Throws<ArgumentException>(() => Bests.As<AgeRow>()).Message, StringComparison.Ordinal);
        Assert.Contains("holds AI, which is no Int32", Assert.Throws<ArgumentException>(() => Bests.As<CodeRow>()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Records_become_columns_that_name_their_units()
    {
        Answer<Estimate> refused = new NotEstimable("the mean", Refusal.TooFewSessions, 2, 1, "sessions");
        var frame = Frame.Of(
        [
            new Summary("AI", new Seconds(62.4), new Estimate(5.98, Unit.Seconds, 6, "mean") { Interval = new Interval(5.6, 6.35, new ConfidenceLevel(0.9)) }, StartRule.StopAtMissedStart, [1, 2]),
            new Summary("BM", null, refused, StartRule.StartWhenFinished, []),
        ]);
        Assert.Equal(["code", "best_set_s", "mean_s", "mean_lower_s", "mean_upper_s", "rule"], frame.Columns.Select(column => column.Name));
        Assert.Equal([62.4, null], frame["best_set_s"].Numbers);
        Assert.Equal([6.35, null], frame["mean_upper_s"].Numbers);
        Assert.Equal("stop_at_missed_start", frame["rule"].Texts[0]);
        Assert.Equal([1.5, 2.5], Frame.Of([1.5, 2.5])["value"].Numbers);
        Assert.Equal([3L], Frame.Of(new[] { new { Tests = 3 } })["tests"].Integers);
    }

    [Fact]
    public void A_data_frame_and_back_keeps_every_cell()
    {
        var data = Bests.ToDataFrame();
        Assert.Equal(2, data.Rows.Count);
        Assert.Null(data["best_total_s"][1]);
        var back = Frame.Of(data);
        Assert.Equal(Bests["best_total_s"].Numbers, back["best_total_s"].Numbers);
        Assert.Equal(Bests["tests"].Integers, back["tests"].Integers);
        Assert.Equal(Bests["code"].Texts, back["code"].Texts);
        Assert.Equal(Bests["last_day"].Dates, back["last_day"].Dates);
        Assert.Equal(Bests["is_junior"].Flags, back["is_junior"].Flags);
        Assert.Equal([1.5, null], Frame.Of(new DataFrame(new SingleDataFrameColumn("x", new float?[] { 1.5f, null })))["x"].Numbers);
    }

    [Fact]
    public void Columns_of_different_lengths_or_equal_names_and_numbers_that_are_none_are_refused()
    {
        Assert.Contains("has 1 cells", Assert.Throws<ArgumentException>(() => new Frame(FrameColumn.OfTexts("a", ["x", "y"]), FrameColumn.OfTexts("b", ["x"]))).Message, StringComparison.Ordinal);
        Assert.Contains("Two columns are named A", Assert.Throws<ArgumentException>(() => new Frame(FrameColumn.OfTexts("a", ["x"]), FrameColumn.OfTexts("A", ["x"]))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => FrameColumn.OfNumbers("a", [double.NaN]));
        Assert.Contains("there are code, best_total_s", Assert.Throws<ArgumentException>(() => Bests["total"]).Message, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => Bests["code"].Numbers);
    }

    [Fact]
    public void The_first_rows_are_a_frame_of_their_own()
    {
        Assert.Equal(["AI"], Bests.First(1)["code"].Texts);
        Assert.Same(Bests, Bests.First(2));
    }

    private sealed record BestRow(string Code, double? BestTotalS, int Tests);

    private sealed record TimeRow(string Code, Seconds BestTotalS);

    private sealed record AgeRow(int Age);

    private sealed record CodeRow(int Code);

    private sealed record Summary(string Code, Seconds? BestSet, Answer<Estimate> Mean, StartRule Rule, IReadOnlyList<int> Ranks);
}
