using SquadAnalytics.Benchmarks.Jobs;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>A fixed-seed sample of the job <c>workbench-kills</c>, whose table of 500 is kept with the benchmarks.</summary>
[Collection(SharedBrowser.Name)]
public sealed class ServerKillsTests(TestBrowser browser)
{
    [Fact]
    public async Task A_server_killed_while_somebody_types_or_imports_loses_at_most_the_cell_being_typed()
    {
        Assert.True(browser.Browser.IsConnected);
        var tally = await WorkbenchKillsJob.KillAsync(WorkbenchProcess.Executable, kills: 4, seed: 20_35);
        Assert.True(tally.Faults.Count == 0, tally.ToString());
        Assert.Equal((2, 2), (tally.Typings, tally.Imports));
        Assert.True(tally.TypedCells > 0);
    }
}
