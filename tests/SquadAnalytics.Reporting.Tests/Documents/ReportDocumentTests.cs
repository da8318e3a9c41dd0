using System.Text.RegularExpressions;
using System.Xml.Linq;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class ReportDocumentTests
{
    private static ReportDocument Example(string text = "Why the slow-down?") => new(text, "Why does this boxer slow after set three?")
    {
        Subject = text,
        Findings = [new Finding(text) { Source = text }],
        Parts =
        [
            new FragmentPart("<h2>Profile</h2><p>Prose.</p>"), new TablePart(new Table("Totals", [new("a")], [["1"]])),
            new WorkingPart("C#", text), new TextPart(text), new FailurePart("cell 4, line 2", text), new FindingsPart(new Findings(new Finding(text))),
        ],
        Foot = new ReportFoot { Parameters = [new(text, text)], DataFingerprint = "ab12", References = [text], MadeAt = new DateTimeOffset(2031, 3, 4, 20, 15, 0, TimeSpan.Zero) },
    };

    [Fact]
    public void Findings_come_before_everything_else()
    {
        var html = Example().ToHtml();
        Assert.InRange(html.IndexOf(">Findings<", StringComparison.Ordinal), 1, html.IndexOf("Profile", StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_forbids_every_outside_request_and_makes_none()
    {
        var html = Example().ToHtml();
        Assert.Contains("content=\"default-src 'none'; style-src 'sha256-", html, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", html, StringComparison.Ordinal);
        Assert.DoesNotMatch(new Regex(@"(?:src|href)\s*=\s*[""']?(?:https?:)?//", RegexOptions.IgnoreCase), html);
        Assert.DoesNotMatch(new Regex(@"url\((?!data:|#)", RegexOptions.IgnoreCase), html);
        Assert.DoesNotContain("@import", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<link", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_hash_in_the_policy_is_that_of_the_style_sheet()
    {
        var html = Example().ToHtml();
        var style = Regex.Match(html, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value;
        var hash = Convert.ToBase64String(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(style)));
        Assert.Contains($"'sha256-{hash}'", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_caution_and_the_fingerprint_stand_at_the_foot()
    {
        var html = Example().ToHtml();
        var foot = html[html.IndexOf("<footer>", StringComparison.Ordinal)..];
        Assert.All(Cautions.All, caution => Assert.Contains(caution.Topic, foot, StringComparison.Ordinal));
        Assert.Contains("ab12", foot, StringComparison.Ordinal);
        Assert.Contains("2031-03-04 20:15 +00:00", foot, StringComparison.Ordinal);
        Assert.Contains("SquadAnalytics 0.1.0", foot, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_is_well_formed_and_every_label_points_at_something()
    {
        var html = (Example() with { Parts = [.. Example().Parts, .. Figures.Examples.All().Select(figure => new FigurePart(figure))] }).ToHtml();
        var page = XElement.Parse(html["<!DOCTYPE html>".Length..]);
        var ids = page.Descendants().Attributes("id").Select(id => id.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(page.Descendants().Attributes("aria-labelledby"), label => Assert.Contains(label.Value, ids));
        Assert.Contains(((string)page.Descendants("a").First(link => (string?)link.Attribute("class") == "skip").Attribute("href")!)[1..], ids);
        Assert.InRange(html.Length, 400_000, 3_000_000);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("</title><script>alert(1)</script>")]
    [InlineData("</style></pre></code><img src=x onerror=alert(1)>")]
    public void Hostile_text_stays_text_wherever_it_appears(string hostile)
    {
        var html = Example(hostile).ToHtml();
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_is_the_same_under_every_culture()
    {
        var expected = Example().ToHtml();
        foreach (var culture in Given.Cultures)
        {
            using var _ = Given.Culture(culture);
            Assert.Equal(expected, Example().ToHtml());
        }
    }

    [Fact]
    public void The_page_without_figures_is_small() => Assert.InRange(Example().ToHtml().Length, 1_000, 400_000);

    [Fact]
    public void There_is_one_main_heading_a_language_and_a_skip_link()
    {
        var html = Example().ToHtml();
        Assert.Single(Regex.Matches(html, "<h1>"));
        Assert.Contains("<html lang=\"en\">", html, StringComparison.Ordinal);
        Assert.Contains("<a class=\"skip\" href=\"#findings\">", html, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(html, "<main>"));
    }
}
