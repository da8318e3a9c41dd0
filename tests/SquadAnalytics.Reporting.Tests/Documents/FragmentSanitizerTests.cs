using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class FragmentSanitizerTests
{
    [Theory]
    [InlineData("<p>Hello <strong>there</strong></p>")]
    [InlineData("<table><caption>c</caption><tbody><tr><th scope=\"row\">a</th><td class=\"number\">1</td></tr></tbody></table>")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\" role=\"img\" aria-label=\"x\"><g clip-path=\"url(#c1)\"><path d=\"M0 0L1 1\"></path></g></svg>")]
    [InlineData("<p>a<br/>b</p>", "<p>a<br></br>b</p>")]
    [InlineData("<p>a\u00A0b é</p>", "<p>a&nbsp;b &eacute;</p>")]
    public void What_is_allowed_stays(string expected, string? fragment = null) => Assert.Equal(expected, FragmentSanitizer.Sanitize(fragment ?? expected));

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("<p onclick=\"alert(1)\">x</p>")]
    [InlineData("<svg><script>alert(1)</script></svg>")]
    [InlineData("<svg onload=\"alert(1)\"></svg>")]
    [InlineData("<svg><foreignObject><iframe src=\"http://x\"/></foreignObject></svg>")]
    [InlineData("<svg><use href=\"http://evil/x.svg#a\"/></svg>")]
    [InlineData("<svg xmlns:xlink=\"http://www.w3.org/1999/xlink\"><image xlink:href=\"http://evil/x.png\"/></svg>")]
    [InlineData("<svg><a href=\"javascript:alert(1)\"><text>x</text></a></svg>")]
    [InlineData("<svg><rect fill=\"url(http://evil/#a)\"/></svg>")]
    [InlineData("<svg><rect fill=\"URL( 'http://evil' )\"/></svg>")]
    [InlineData("<svg><style>@import url(http://evil)</style></svg>")]
    [InlineData("<svg><animate attributeName=\"href\" values=\"javascript:alert(1)\"/></svg>")]
    [InlineData("<svg><set attributeName=\"onmouseover\" to=\"alert(1)\"/></svg>")]
    [InlineData("<svg><desc><script>alert(1)</script></desc></svg>")]
    [InlineData("<svg><title><img src=\"x\" onerror=\"alert(1)\"/></title></svg>")]
    [InlineData("<img src=\"http://evil/pixel.gif\" alt=\"\"/>")]
    [InlineData("<img src=\"data:image/svg+xml;base64,AAAA\" alt=\"\"/>")]
    [InlineData("<a href=\"javascript:alert(1)\">x</a>")]
    [InlineData("<a href=\" java&#10;script:alert(1)\">x</a>")]
    [InlineData("<a href=\"data:text/html,x\">x</a>")]
    [InlineData("<p style=\"background:url(http://evil)\">x</p>")]
    [InlineData("<link rel=\"stylesheet\" href=\"http://evil\"/>")]
    [InlineData("<meta http-equiv=\"refresh\" content=\"0;url=http://evil\"/>")]
    [InlineData("<base href=\"http://evil/\"/>")]
    [InlineData("<form action=\"http://evil\"><input name=\"a\"/></form>")]
    [InlineData("<iframe srcdoc=\"&lt;script&gt;\"/>")]
    [InlineData("<math><mtext><script>alert(1)</script></mtext></math>")]
    [InlineData("<x:script xmlns:x=\"http://www.w3.org/1999/xhtml\">alert(1)</x:script>")]
    [InlineData("<svg xmlns:x=\"http://www.w3.org/2000/svg\"><x:script>alert(1)</x:script></svg>")]
    [InlineData("<svg xmlns=\"http://www.w3.org/1999/xhtml\"><script>alert(1)</script></svg>")]
    [InlineData("<!--><script>alert(1)</script>-->")]
    [InlineData("<template><script>alert(1)</script></template>")]
    public void What_runs_loads_or_restyles_is_left_out(string attack)
    {
        var html = FragmentSanitizer.Sanitize(attack);
        string[] forbidden = ["<script", "onclick", "onload", "onerror", "alert(1)\"", "javascript:", "evil", "<iframe", "<style", "style=", "<link", "<meta", "<base", "<form", "<use", "<image", "svg+xml", "data:text", "srcdoc", "xhtml", "<img src=\"x\"", "<animate", "<set"];
        Assert.All(forbidden, word => Assert.DoesNotContain(word, html, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("<p>never closed")]
    [InlineData("</root><script>alert(1)</script><root>")]
    [InlineData("<p a=b>x</p>")]
    [InlineData("<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]><p>&e;</p>")]
    [InlineData("a < b")]
    [InlineData("\u0000<p>x</p>")]
    public void What_is_not_well_formed_is_shown_as_text(string fragment)
    {
        var html = FragmentSanitizer.Sanitize(fragment);
        Assert.StartsWith("<pre>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<p>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Nesting_without_end_is_shown_as_text_and_does_not_overflow()
    {
        var html = FragmentSanitizer.Sanitize(string.Concat(Enumerable.Repeat("<div>", 20000)) + string.Concat(Enumerable.Repeat("</div>", 20000)));
        Assert.StartsWith("<pre>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Sanitizing_twice_changes_nothing()
    {
        const string fragment = "<div class=\"x\">a &amp; b<br/><svg><title>t<b>u</b></title><path d=\"M0 0\"/></svg><img alt=\"\" src=\"data:image/png;base64,AAAA\"/></div>";
        var once = FragmentSanitizer.Sanitize(fragment);
        Assert.Equal(once, FragmentSanitizer.Sanitize(once));
        Assert.Contains("<title>tu</title>", once, StringComparison.Ordinal);
    }
}
