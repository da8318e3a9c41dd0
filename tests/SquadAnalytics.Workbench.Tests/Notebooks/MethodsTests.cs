using System.Globalization;
using SquadAnalytics.Reporting.Published;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>Every method beside a published number, asked as a user asks it.</summary>
public sealed class MethodsTests(GeneratedLogbook logbook) : IClassFixture<GeneratedLogbook>
{
    [Fact]
    public void Every_printed_number_is_asked_for_and_agrees()
    {
        var printed = PublishedData.Names.Sum(name => PublishedData.Read(name).Printed.Count);
        var run = NotebookRun.Of(logbook.Work, "methods");
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"All {printed} numbers of {PublishedData.Names.Count} published data sets agree"), run, StringComparison.Ordinal);
    }
}
