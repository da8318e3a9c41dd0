using System.Xml.Linq;
using SkiaSharp;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Reporting.Tests.Figures;

public class FigureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Names => [.. Examples.All().Select(figure => figure.GetType().Name)];

    private static Figure Named(string name) => Examples.All().Single(figure => figure.GetType().Name == name);

    private static IReadOnlyList<string> Words(Figure figure, FigureSize size) =>
        [.. XDocument.Parse(figure.ToSvg(size)).Descendants(Svg + "text").Select(text => text.Value)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_figure_has_a_question_a_caption_and_its_content_in_words(string name)
    {
        var figure = Named(name);
        Assert.Contains('?', figure.Title);
        Assert.InRange(figure.Caption.Length, 40, 900);
        Assert.InRange(figure.AlternativeText.Length, 20, 2000);
        var svg = XDocument.Parse(figure.ToSvg()).Root!;
        Assert.Equal(figure.Title, svg.Element(Svg + "title")!.Value);
        Assert.Equal(figure.AlternativeText, svg.Element(Svg + "desc")!.Value);
        Assert.Equal(figure.AlternativeText, (string?)svg.Attribute("aria-label"));
        Assert.Equal("img", (string?)svg.Attribute("role"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void All_forms_at_once_are_the_forms_one_by_one(string name)
    {
        var forms = Named(name).ToForms();
        Assert.Equal(Named(name).ToHtml(), forms.Html);
        Assert.Equal(Named(name).ToSvg(), forms.Svg);
        Assert.Equal(Named(name).ToPng(), forms.Png.ToArray());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_mark_is_drawn_twice(string name)
    {
        // Marks that stand in one place are of different colours, such as a dot and its ground; the drawing library draws a whole plot again
        // when it first sees its limits.
        foreach (var size in Enum.GetValues<FigureSize>())
        {
            var groups = XDocument.Parse(Named(name).ToSvg(size)).Root!.Elements(Svg + "g").Select(group => group.ToString()).ToList();
            Assert.NotEmpty(groups);
            Assert.Equal(groups.Distinct(), groups);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_figure_reads_the_same_under_every_culture(string name)
    {
        var (expected, html) = (Named(name).ToSvg(), Named(name).ToHtml());
        foreach (var culture in Given.Cultures)
        {
            using var _ = Given.Culture(culture);
            Assert.Equal(expected, Named(name).ToSvg());
            Assert.Equal(html, Named(name).ToHtml());
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_text_uses_the_bundled_typeface_and_stays_on_the_sheet(string name)
    {
        foreach (var size in Enum.GetValues<FigureSize>())
        {
            var svg = XDocument.Parse(Named(name).ToSvg(size)).Root!;
            var width = (float)svg.Attribute("width")!;
            foreach (var text in svg.Descendants(Svg + "text"))
            {
                Assert.StartsWith("'Source Sans 3'", (string)text.Attribute("font-family")!, StringComparison.Ordinal);
                var (left, right) = Extent(text);
                Assert.True(left >= -1 && right <= width + 1, $"'{text.Value}' of {name} ({size}) runs from {left} to {right} on a sheet of {width}.");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_two_texts_overlap(string name)
    {
        foreach (var size in Enum.GetValues<FigureSize>())
        {
            var texts = XDocument.Parse(Named(name).ToSvg(size)).Root!.Descendants(Svg + "text").Select(text => (text.Value, Box: Box(text))).ToList();
            for (var i = 0; i < texts.Count; i++)
            {
                for (var j = i + 1; j < texts.Count; j++)
                    Assert.False(texts[i].Box.IntersectsWith(texts[j].Box), $"'{texts[i].Value}' and '{texts[j].Value}' overlap in {name} ({size}).");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_html_figure_passes_the_allow_list_unchanged_and_shares_no_id(string name)
    {
        var html = Named(name).ToHtml();
        var parsed = XElement.Parse(html.Replace("<br>", "<br/>", StringComparison.Ordinal));
        var cleaned = XElement.Parse(FragmentSanitizer.Sanitize(html));
        Assert.True(XNode.DeepEquals(Normal(parsed), Normal(cleaned)), "The allow-list changed the figure.");
        var ids = parsed.Descendants().Attributes("id").Select(id => id.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(parsed.Descendants().Attributes("clip-path"), clip => Assert.Contains(clip.Value[5..^1], ids));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_has_ink_on_white_paper_and_prints_at_300_dots_per_inch(string name)
    {
        using var picture = SKBitmap.Decode(Named(name).ToPng());
        Assert.Equal(2160, picture.Width);
        Assert.Equal(SKColors.White, picture.GetPixel(picture.Width - 1, picture.Height - 1));
        var ink = picture.Pixels.Count(pixel => pixel.Red + pixel.Green + pixel.Blue < 300);
        Assert.InRange(ink, 2000, picture.Pixels.Length / 3);
    }

    [Theory]
    [InlineData(nameof(HowWasItPaced), "work time, s (faster ↓)", "60.8", "14 Feb 2031|11 Feb 2031")]
    [InlineData(nameof(WhereDoesTheSlowdownArise), "squats", "transitions", "+3.20 s", "← faster", "seconds", "time at each station, set 2 minus set 1")]
    [InlineData(nameof(WhoChanged), "Boxer 7", "slower →", "seconds; shaded: less than 5.0 s", "session total against each athlete's own tests before, s")]
    [InlineData(nameof(HowMuchRestWasLeft), "110.0 s work", "10.0 s rest", "no rest", "next start", "seconds after the start signal")]
    [InlineData(nameof(IsTheAthleteImproving), "session total, s (faster ↓)", "Base", "Slate", "training load of the week, AU (RPE × minutes)", "6 Jan")]
    [InlineData(nameof(DidTheBlocksDiffer), "mean session total, s", "○ Base", "● Power", "← faster", "slower →", "Power minus Base", "seconds")]
    [InlineData(nameof(ForWhomDidItDiffer), "Power minus Base", "Boxer 7", "slower →", "seconds; shaded: less than 5.0 s")]
    [InlineData(nameof(WhereDoesEveryoneStand), "recent level, session total in s", "Slate", "Boxer 6", "283.6 s")]
    [InlineData(nameof(HowDoesEveryonesSeasonGo), "seconds from their own level, over the season (faster ↓)", "Boxer 1", "Boxer 7")]
    [InlineData(nameof(HowNoisyIsTheTest), "later minus earlier total, s (faster ↓)", "mean −2.1 s", "upper limit +9.1 s", "lower limit −13.3 s")]
    [InlineData(nameof(WhoRanksWhere), "ranks 1 to 2", "ranks 2 to 3", "rank (1 is fastest)")]
    [InlineData(nameof(IsThisTestOutOfLine), "session total, s (faster ↓)", "mean 324.2 s", "lower limit 316.6 s")]
    [InlineData(nameof(HowManyMoreTests), "number of tests", "80 %", "3 s")]
    [InlineData(nameof(HowMuchDoesTheClockExplain), "work time, s (faster ↓)", "timed", "model, fixed rest")]
    [InlineData(nameof(HowDoesEveryonePace), "seconds over the first set (faster ↓)", "A1", "+6.8", "−1.0")]
    public void Labels_and_units_stand_in_the_picture(string name, params string[] labels)
    {
        var words = Words(Named(name), FigureSize.Wide);
        Assert.All(labels, label => Assert.Contains(words, word => label.Split('|').Contains(word)));
    }

    [Fact]
    public void Athletes_are_sorted_and_those_who_cannot_be_estimated_come_last()
    {
        var order = XDocument.Parse(Examples.Changed().ToSvg()).Descendants(Svg + "text").Select(text => text.Value).Where(word => word.StartsWith("Boxer", StringComparison.Ordinal)).ToList();
        var changes = Examples.Changes().Rows.Where(row => row.Change.IsEstimated).OrderBy(row => row.Change.GetOrThrow().Change.Value).Select(row => $"Boxer {row.AthleteId[1..]}");
        Assert.Equal([.. changes, "Boxer 9"], order);
    }

    [Fact]
    public void Rest_on_a_two_minute_clock_is_what_work_leaves_of_it()
    {
        // Common practice, no source: on a 120-second start interval 50 s of work leave 70 s of rest and 70 s leave 50 s.
        var words = Words(new HowMuchRestWasLeft("A1", Examples.Clock(50, 70, 60)), FigureSize.Wide);
        Assert.Contains("70.0 s rest", words);
        Assert.Contains("50.0 s rest", words);
    }

    [Fact]
    public void Hostile_names_are_text()
    {
        var html = new HowDoesEveryonePace([new("<script>alert(1)</script>", [new(60), new(61)])], "\"><img src=x>").ToHtml();
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Levels_are_not_mixed_in_one_figure() => Assert.Throws<ArgumentException>(() =>
        LevelText.Of([Given.Seconds(1, 0, 2), new Estimate(1, Unit.Seconds, 3, "t") { Interval = new Interval(0, 2, ConfidenceLevel.NinetyFive) }]));

    private static XElement Normal(XElement element) => new(
        element.Name,
        element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration).OrderBy(attribute => attribute.Name.ToString(), StringComparer.Ordinal),
        element.HasElements ? element.Elements().Select(Normal) : element.Value);

    private static (float Left, float Right) Extent(XElement text)
    {
        var box = Box(text, 0);
        return (box.Left, box.Right);
    }

    private static SKRect Box(XElement text, float margin = 1)
    {
        var size = (float)text.Attribute("font-size")!;
        using var font = new SKFont(BundledFont.Typeface((string?)text.Attribute("font-weight") == "600"), size);
        var width = font.MeasureText(text.Value);
        var move = new float[2];
        var x = (float)text.Attribute("x")! + move[0];
        var y = (float)text.Attribute("y")! + move[1];
        var left = (string?)text.Attribute("text-anchor") switch { "middle" => x - (width / 2), "end" => x - width, _ => x };
        return new SKRect(left + margin, y - (0.66f * size) + margin, left + width - margin, y - margin);
    }
}
