using SquadAnalytics.Import;
using SquadAnalytics.SampleSquad;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

/// <summary>The messy sample files: for each, the rows that are kept, refused and asked about, counted by hand from the file.</summary>
public sealed class ClipboardFilesTests
{
    private static readonly ImportOptions Sample = new() { Squad = SquadGenerator.Generate(Scenarios.Quillmere).Squad };

    [Theory]
    [InlineData("accents-old-encoding.csv", 5, 2, 1, 2, new[] { "name:Anahi Wexcombe", "name:Ollivarne, Dragan" })]
    [InlineData("april-long.tsv", 12, 5, 1, 6, new[] { "date-order:april-long.tsv" })]
    [InlineData("evening-semicolons.csv", 8, 3, 1, 4, new[] { "decimal:evening-semicolons.csv", "name:Brona Quilter", "name:matiu gravelock" })]
    [InlineData("junior-stations.csv", 3, 0, 0, 3, new[] { "stations:junior-stations.csv:3" })]
    [InlineData("no-headers.txt", 2, 0, 0, 2, new[] { "columns:no-headers.txt:1", "date:no-headers.txt:1", "protocol:no-headers.txt:1" })]
    [InlineData("running-clock.csv", 4, 2, 0, 2, new[] { "clock:running-clock.csv:1:100" })]
    [InlineData("two-evenings.xlsx", 5, 3, 0, 2, new[] { "day-fraction:two-evenings.xlsx:10 April 2031:hours", "day-fraction:two-evenings.xlsx:Long Four:seconds" })]
    [InlineData("years-from-1904.xlsx", 4, 3, 1, 0, new string[0])]
    public void Each_file_is_accounted_for_as_counted_by_hand(string name, int rows, int kept, int refused, int waiting, string[] decisions)
    {
        var result = Read(name, Sample);
        Assert.Equal((rows, kept, refused, waiting), (result.Report.Rows, result.Report.Kept, result.Report.RefusedRows, result.Report.DecisionRows));
        Assert.Equal(decisions, result.Decisions.Select(decision => decision.Id).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_answers_of_a_person_settle_the_files()
    {
        var clock = Read("running-clock.csv", Sample.Answering("clock:running-clock.csv:1:100", "clock"));
        Assert.Equal([61.4, 62.1, 62.8, 63.4, 64, 64.9], Times(clock.NewSessions[0]));
        var stations = Read("junior-stations.csv", Sample.Answering("stations:junior-stations.csv:3", "cumulative"));
        Assert.Equal([12.5, 10.2, 11.2, 13.8, 7.2], stations.NewSessions[0].Stations.Take(5).Select(station => station.Work!.Value.Value));
        Assert.Equal("six-five-junior", stations.NewSessions[0].Protocol.Id);
        var workbook = Read("two-evenings.xlsx", Sample.Answering("day-fraction:two-evenings.xlsx:10 April 2031:hours", "minutes:seconds", "day-fraction:two-evenings.xlsx:Long Four:seconds", "hours:minutes:seconds"));
        Assert.Equal((5, 5), (workbook.Report.Rows, workbook.Report.Kept));
        Assert.Equal([62, 63, 62, 64, 65, 65], Times(workbook.NewSessions.Single(session => session.AthleteId == "b13")));
        var evening = Read("evening-semicolons.csv", (Sample with { DecimalMark = DecimalMark.Comma }).Answering("name:Brona Quilter", "new athlete", "name:matiu gravelock", "Matiu Gravelock [MGR]"));
        Assert.Equal((8, 7, 1), (evening.Report.Rows, evening.Report.Kept, evening.Report.RefusedRows));
        Assert.All(evening.NewSessions, session => Assert.Equal(new DateOnly(2031, 4, 3), session.Date));
    }

    [Fact]
    public void The_files_kept_with_the_sources_are_the_ones_described_here()
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "SampleClipboard");
        Assert.Equal(ClipboardFiles.All.Select(file => file.Name).Append(ClipboardFiles.ReadmeName).Order(StringComparer.Ordinal), Directory.GetFiles(folder).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal));
        foreach (var file in ClipboardFiles.All.Where(file => !file.Name.EndsWith(".xlsx", StringComparison.Ordinal))) Assert.Equal(file.Content, File.ReadAllBytes(Path.Combine(folder, file.Name)));
    }

    private static ImportResult Read(string name, ImportOptions options)
    {
        var result = ClipboardImport.Read(ImportSource.FromFile(Path.Combine(AppContext.BaseDirectory, "SampleClipboard", name)), options);
        AssertAccounted(result);
        return result;
    }
}
