using System.Text.RegularExpressions;
using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>The gallery shows every figure there is, on the sample and on another squad.</summary>
public sealed partial class GalleryTests(GeneratedLogbook second) : IClassFixture<GeneratedLogbook>
{
    private static readonly int Figures = typeof(Figure).Assembly.GetExportedTypes().Count(type => !type.IsAbstract && type.IsAssignableTo(typeof(Figure)));

    [Fact]
    public void Every_figure_of_the_library_is_in_it_once()
    {
        var titles = Titles(NotebookRun.Page(second.Work, "gallery"));
        Assert.Equal(Figures, titles.Count);
        Assert.Equal(Figures, titles.Distinct().Count());
    }

    [Fact]
    public void Another_squad_fills_them_too()
    {
        var breaker = second.Truth.LateBreaker;
        var page = NotebookRun.Page(second.Work, "gallery",
            "--logbook", second.Folder, "--set", $"athlete={second.Squad.Athlete(breaker.AthleteId).Code}", "--set", $"protocol={second.Truth.Scenario.MainTest.Protocol.Id}", "--set", "afterSet=4");
        Assert.Equal(Figures, Titles(page).Count);
        Assert.Contains(((LateBreak)breaker.Story!).Station, page, StringComparison.Ordinal);
    }

    private static List<string> Titles(string page) => [.. Caption().Matches(page).Select(match => match.Groups[1].Value)];

    [GeneratedRegex(@"<figcaption><strong>(?:Figure[^.]*\.\s)?(.*?)</strong>")]
    private static partial Regex Caption();
}
