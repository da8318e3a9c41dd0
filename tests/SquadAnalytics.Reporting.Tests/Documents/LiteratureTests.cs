using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class LiteratureTests
{
    [Fact]
    public void What_a_text_cites_is_listed_once_by_first_author() => Assert.Equal(
        [
            "Fieller EC (1954) J R Stat Soc B 16:175-185.",
            "Hopkins WG (2000) Sports Med 30:1-15.",
            "Hopkins WG (2004) Sportscience 8:1-7.",
            "La Monica MB et al. (2016) J Strength Cond Res 30:400-406.",
            "Swinton PA et al. (2018) Front Nutr 5:41.",
        ],
        Literature.CitedIn("n = 20 · Hopkins 2000, 2004; Swinton et al. 2018\nFieller 1954 for the share; La Monica et al. 2016; Hopkins 2000"));

    [Theory]
    [InlineData("In 2000 tests Hopkins")]
    [InlineData("McHopkins 2000")]
    [InlineData("Hopkins; 2000")]
    [InlineData("")]
    public void Words_and_years_alone_are_no_citation(string text) => Assert.Empty(Literature.CitedIn(text));

    [Fact]
    public void Every_reference_is_found_under_its_author_and_year() => Assert.All(
        Literature.All.Where(reference => reference.Contains('(', StringComparison.Ordinal)),
        reference =>
        {
            var year = reference.IndexOf('(', StringComparison.Ordinal);
            var author = reference.Split([',', '('])[0].Trim();
            author = author.Contains(" et al", StringComparison.Ordinal) ? author[..author.IndexOf(" et al", StringComparison.Ordinal)] : author;
            var name = string.Join(' ', author.Split(' ').Where((word, k) => k == 0 || !word.All(char.IsUpper)));
            Assert.Contains(reference, Literature.CitedIn($"{name} et al. {reference.Substring(year + 1, 4)}"));
        });
}
