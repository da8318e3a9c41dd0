using SquadAnalytics.Import;

namespace SquadAnalytics.Tests.Import;

/// <summary>All names are invented.</summary>
public sealed class NameMatcherTests
{
    private static readonly Athlete Zoe = new("a1", "Zoë Brandér", "ZB") { Aliases = ["Zo"] };
    private static readonly Athlete Lukasz = new("a2", "Łukasz Żółw", "LZ");
    private static readonly Athlete Ivan = new("a3", "Иван Йорков", "IJ");
    private static readonly NameMatcher Matcher = new([Zoe, Lukasz, Ivan]);

    [Theory]
    [InlineData("Zoë Brandér")]
    [InlineData(" Zoë Brandér ")]
    [InlineData("ZB")]
    [InlineData("Zo")]
    [InlineData("Zoe\u0308 Brande\u0301r")] // the same letters, composed otherwise
    public void The_same_text_is_a_match(string name) => Assert.Equal([Zoe], Matcher.Exact(name));

    [Theory]
    [InlineData("zoë brandér")]
    [InlineData("Zoe Brander")]
    [InlineData("ZOË  BRANDÉR")]
    [InlineData("Brandér, Zoë")]
    [InlineData("brander,zoe")]
    [InlineData("Zoe Branders")]
    [InlineData("Zoe Brnader")]
    [InlineData("Z. Brander")]
    [InlineData("Brander")]
    [InlineData("zb")]
    public void A_name_that_only_resembles_is_a_suggestion_and_no_match(string name)
    {
        Assert.Empty(Matcher.Exact(name));
        Assert.Equal([Zoe], Matcher.Suggestions(name));
    }

    [Fact]
    public void Letters_that_do_not_decompose_and_other_scripts_are_compared_too()
    {
        Assert.Equal([Lukasz], Matcher.Suggestions("Lukasz Zolw"));
        Assert.Equal([Ivan], Matcher.Suggestions("ИВАН ЙОРКОВ"));
        Assert.Empty(Matcher.Suggestions("Ада Нова"));
    }
}
