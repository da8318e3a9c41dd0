using Microsoft.Playwright;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>The report of every notebook that comes along, opened in a browser as a file: for those who cannot see it, on a phone, without a network, and small enough to send.</summary>
[Collection(SharedBrowser.Name)]
public sealed class ReportTests(TestBrowser browser)
{
    private const int MegaByte = 1_000_000;

    [Fact]
    public async Task Every_report_is_sound_in_light_and_dark_asks_for_nothing_from_outside_and_is_under_three_megabytes()
    {
        var folder = Directory.CreateTempSubdirectory("squad-reports-").FullName;
        try
        {
            await using var kernels = new KernelSource(KernelCommand.ForAssembly(WorkbenchProcess.Executable), KernelLimits.Default);
            await using var context = await browser.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 800 } });
            var page = await context.NewPageAsync();
            page.SetDefaultTimeout(90_000);
            var requests = new List<string>();
            page.Request += (_, request) => requests.Add(request.Url);
            var names = Shipped.NotebookNames();
            Assert.Equal(9, names.Count);
            foreach (var name in names)
            {
                var file = Path.Combine(folder, name + ".html");
                await File.WriteAllTextAsync(file, await Report(kernels, name));
                Assert.True(new FileInfo(file).Length < 3 * MegaByte, $"{name}: {new FileInfo(file).Length} bytes.");
                requests.Clear();
                await page.GotoAsync(new Uri(file).AbsoluteUri);
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), $"{name} is wider than a phone.");
                await Axe.AssertNothing(page);
                Assert.DoesNotContain(requests, static url => !url.StartsWith("file:", StringComparison.Ordinal) && !url.StartsWith("data:", StringComparison.Ordinal));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> Report(KernelSource kernels, string name)
    {
        var notebook = NotebookFile.Read(Path.Combine(Shipped.Notebooks, name + ".ipynb"));
        var run = await new NotebookRunner(kernels, TimeProvider.System).RunAsync(new RunRequest(name, notebook, Shipped.Notebooks) { LogbookFolder = Shipped.SampleSquad, DataNote = "Invented data." });
        Assert.True(run.Succeeded, $"{name}: {run.Problem}");
        return RunReport.Of(run).ToHtml();
    }
}
