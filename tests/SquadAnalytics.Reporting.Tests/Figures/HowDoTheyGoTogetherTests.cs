using System.Xml.Linq;
using SquadAnalytics.Frames;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Reporting.Tests.Figures;

public sealed class HowDoTheyGoTogetherTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly Frame Evening = new(
        FrameColumn.OfTexts("code", ["AI", "BM", "AI", "BM"]),
        FrameColumn.OfDates("test_date", [new DateOnly(2031, 1, 7), new DateOnly(2031, 1, 7), new DateOnly(2031, 1, 14), null]),
        FrameColumn.OfNumbers("total_s", [321.4, 330, 319.2, 328.5]),
        FrameColumn.OfNumbers("best_set_s", [62.4, 63, 61.9, null]));

    [Fact]
    public void One_line_draws_a_column_against_another_and_says_what_was_left_out()
    {
        var figure = Evening.Plot("test_date", "total_s", by: "code");
        Assert.Equal("How do test date and total go together?", figure.Title);
        Assert.Equal("Total, s against test date, 3 rows, by code. 1 row without a value left out. The values as they stand in the table; nothing was fitted.", figure.Caption);
        Assert.Equal("Total, s against test date. AI: 2 dots, 319.2 to 321.4 s, first 321.4, last 319.2; BM: 1 dot, 330 s, first 330, last 330.", figure.AlternativeText);
        Assert.Equal("Who is fast when?", (figure with { Question = "Who is fast when?" }).Title);
    }

    [Fact]
    public void Words_become_rows()
    {
        var texts = Texts(Evening.Plot("code", "total_s"));
        Assert.Contains("AI", texts);
        Assert.Contains("total, s", texts);
        Assert.DoesNotContain("first", Evening.Plot("code", "total_s").AlternativeText, StringComparison.Ordinal);
    }

    [Fact]
    public void Dots_are_joined_only_where_each_group_has_one_value_per_place()
    {
        int Lines(HowDoTheyGoTogether figure) => XDocument.Parse(figure.ToSvg()).Descendants(Svg + "path").Count();
        var dates = Evening.Plot("test_date", "total_s", by: "code");
        Assert.True(Lines(dates) > Lines(dates with { Join = false }));
        var alone = Evening.Plot("test_date", "total_s");
        Assert.Equal(Lines(alone), Lines(alone with { Join = false }));
    }

    [Fact]
    public void What_cannot_be_drawn_is_refused_with_the_reason()
    {
        Assert.Contains("does not hold numbers", Assert.Throws<ArgumentException>(() => Evening.Plot("total_s", "code")).Message, StringComparison.Ordinal);
        Assert.Contains("there are code, test_date", Assert.Throws<ArgumentException>(() => Evening.Plot("day", "total_s")).Message, StringComparison.Ordinal);
        Assert.Contains("No row has both", Assert.Throws<ArgumentException>(() => Evening.First(0).Plot("code", "total_s")).Message, StringComparison.Ordinal);
        var many = new Frame(FrameColumn.OfTexts("code", Enumerable.Range(0, 61).Select(number => $"B{number}")), FrameColumn.OfNumbers("total_s", Enumerable.Repeat((double?)1, 61)));
        Assert.Contains("61 different words", Assert.Throws<ArgumentException>(() => many.Plot("code", "total_s")).Message, StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> Texts(Figure figure) => [.. XDocument.Parse(figure.ToSvg()).Descendants(Svg + "text").Select(text => text.Value)];
}
