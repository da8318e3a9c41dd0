using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using SquadAnalytics.Benchmarks.Browser;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Kills the server at random moments while a person types or imports, and looks at what is left.</summary>
internal sealed class WorkbenchKillsJob : Job
{
    private static readonly DateOnly TypedDay = new(2035, 5, 4);
    private const int MostRepeated = 10;

    private static readonly TimeSpan BetweenKeys = TimeSpan.FromMilliseconds(60);

    public override string Name => "workbench-kills";

    public override string Summary => "Kills (SIGKILL) the server while somebody types or imports in the browser; at most the cell being typed may be missing.";

    public override string Usage => """
        workbench-kills --workbench PATH [--kills 500] [--seed 1] [--lanes 1] [--out FILE]
          --workbench  the published executable, or the built SquadAnalytics.Workbench.dll
          --lanes      how many browsers and servers are at it at the same time
          --out        a file for the table with seed, commit and machine
        Exit code 1 when a logbook did not open, more than the cell being typed was missing, or an import was kept in part.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var workbench = Option(arguments, "--workbench") ?? throw new ArgumentException("Name the executable: --workbench PATH.", nameof(arguments));
        var kills = int.Parse(Option(arguments, "--kills") ?? "500", CultureInfo.InvariantCulture);
        var seed = int.Parse(Option(arguments, "--seed") ?? "1", CultureInfo.InvariantCulture);
        var lanes = int.Parse(Option(arguments, "--lanes") ?? "1", CultureInfo.InvariantCulture);
        var clock = Stopwatch.GetTimestamp();
        var shares = Enumerable.Range(0, lanes).Select(lane => KillAsync(workbench, (kills / lanes) + (lane < kills % lanes ? 1 : 0), seed + lane)).ToList();
        var tally = Task.WhenAll(shares).GetAwaiter().GetResult().Aggregate((one, other) => one.With(other)) with { Seed = seed, Lanes = lanes, Seconds = Stopwatch.GetElapsedTime(clock).TotalSeconds };
        Console.WriteLine(tally);
        if (Option(arguments, "--out") is { } file) File.WriteAllText(file, tally.Table(Provenance.Commit(), Provenance.Machine()));
        return tally.Faults.Count == 0 ? 0 : 1;
    }

    /// <summary>Runs the kills and counts what was found afterwards.</summary>
    internal static async Task<WorkbenchKills> KillAsync(string workbench, int kills, int seed)
    {
        var random = new Random(seed);
        var clock = Stopwatch.GetTimestamp();
        var tally = new WorkbenchKills(seed);
        await using var browser = await MeasuringBrowser.StartAsync();
        var accept = await InFolderAsync(logbook => AcceptAsync(workbench, logbook, browser));
        for (var kill = 0; kill < kills;)
        {
            try
            {
                tally = kill % 2 == 0
                    ? tally.WithTyping(await InFolderAsync(logbook => TypeAsync(workbench, logbook, browser, random)))
                    : tally.WithImport(await InFolderAsync(logbook => ImportAsync(workbench, logbook, browser, accept * 1.3 * random.NextDouble())));
                kill++;
            }
            catch (Exception error) when (error is PlaywrightException or TimeoutException && tally.Repeated < MostRepeated)
            {
                // Before the kill the browser waited in vain, on a machine with other work: that kill is done again, and counted.
                await Console.Error.WriteLineAsync($"kill {kill + 1} is done again: {error.Message}");
                tally = tally with { Repeated = tally.Repeated + 1 };
            }
        }

        return tally with { Seconds = Stopwatch.GetElapsedTime(clock).TotalSeconds };
    }

    private static async Task<T> InFolderAsync<T>(Func<string, Task<T>> work)
    {
        var folder = Directory.CreateTempSubdirectory("workbench-kills-").FullName;
        try
        {
            var logbook = Path.Combine(folder, "logbook");
            SampleFolder.Save(SquadGenerator.Generate(Scenarios.Brackenholt), logbook);
            return await work(logbook);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<KilledTyping> TypeAsync(string workbench, string folder, MeasuringBrowser browser, Random random)
    {
        await using var served = ServedLogbook.Start(workbench, folder);
        var page = await browser.WindowAsync();
        var first = await served.NextAddressAsync();
        await page.GotoAsync(first.AbsoluteUri);
        await page.GotoAsync(new Uri(first, "/logbook/type").AbsoluteUri);
        await page.GetByLabel("Date").FillAsync(TypedDay.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        await page.GetByLabel("Date").BlurAsync();
        await page.Locator("table.grid caption", new() { HasText = TypedDay.ToString("d MMMM yyyy", CultureInfo.InvariantCulture) }).WaitForAsync(new() { State = WaitForSelectorState.Attached });
        var start = page.Locator("input[data-grid-row='0'][data-grid-column='1']");
        await start.FocusAsync();
        var moment = TimeSpan.FromMilliseconds(200 + (random.NextDouble() * 4000));
        var typed = new List<string>();
        var clock = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(clock) < moment)
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{60 + (random.Next(200) / 10.0):0.0}");
            foreach (var key in text)
            {
                if (Stopwatch.GetElapsedTime(clock) >= moment) break;
                await page.Keyboard.PressAsync(key.ToString());
                await Task.Delay(BetweenKeys);
            }

            if (Stopwatch.GetElapsedTime(clock) >= moment) break;
            await page.Keyboard.PressAsync("Enter");
            typed.Add(text);
        }

        await served.KillAsync();
        await page.Context.CloseAsync();
        return Left(folder, typed);
    }

    private static KilledTyping Left(string folder, List<string> typed)
    {
        try
        {
            using var logbook = Logbook.Open(folder);
            var kept = logbook.Drafts is [.., var draft] ? draft.Cells.Where(cell => cell.Row.Length > 0).Select(cell => cell.Text).ToList() : [];
            return new(typed.Count, kept.Count, typed.Take(kept.Count).SequenceEqual(kept) ? null : $"typed {string.Join(' ', typed)}, found {string.Join(' ', kept)}");
        }
        catch (Exception error) when (error is IOException or LogbookContentException or FormatException)
        {
            return new(typed.Count, 0, error.Message);
        }
    }

    // How long an import takes from the click until the page says that it is kept, on this machine as busy as it is: kills fall within that time.
    private static async Task<TimeSpan> AcceptAsync(string workbench, string folder, MeasuringBrowser browser)
    {
        await using var served = ServedLogbook.Start(workbench, folder);
        var keep = await PasteAsync(served, browser, Names(folder));
        var clock = Stopwatch.GetTimestamp();
        await keep.EvaluateAsync("button => button.click()");
        await keep.Page.GetByText("sessions are in the logbook").WaitForAsync();
        await keep.Page.Context.CloseAsync();
        return Stopwatch.GetElapsedTime(clock);
    }

    private static async Task<KilledImport> ImportAsync(string workbench, string folder, MeasuringBrowser browser, TimeSpan moment)
    {
        var names = Names(folder);
        var before = Sessions(folder);
        await using var served = ServedLogbook.Start(workbench, folder);
        var keep = await PasteAsync(served, browser, names);
        var accepting = keep.EvaluateAsync("button => button.click()");
        await Task.Delay(moment);
        await served.KillAsync();
        await accepting;
        await keep.Page.Context.CloseAsync();
        try
        {
            var more = Sessions(folder) - before;
            return new(more == names.Length, more == 0 || more == names.Length ? null : $"{more} of {names.Length} sessions were kept");
        }
        catch (Exception error) when (error is IOException or LogbookContentException or FormatException)
        {
            return new(false, error.Message);
        }
    }

    private static async Task<ILocator> PasteAsync(ServedLogbook served, MeasuringBrowser browser, string[] names)
    {
        var page = await browser.WindowAsync();
        var first = await served.NextAddressAsync();
        await page.GotoAsync(first.AbsoluteUri);
        await page.GotoAsync(new Uri(first, "/logbook/files").AbsoluteUri);
        await page.GetByLabel("or paste from a spreadsheet").FillAsync("Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\n" + string.Concat(names.Select(name => $"{name}\t2035-03-01\tTall Three\t61.2\t62.1\t63.0\n")));
        await page.GetByLabel("or paste from a spreadsheet").BlurAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Read what was pasted" }).ClickAsync();
        var keep = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Keep [1-9]") });
        await keep.WaitForAsync();
        return keep;
    }

    private static string[] Names(string folder)
    {
        using var logbook = Logbook.Open(folder);
        return [.. logbook.Squad.Athletes.Take(8).Select(athlete => athlete.DisplayName)];
    }

    private static int Sessions(string folder)
    {
        using var logbook = Logbook.Open(folder);
        return logbook.Squad.Sessions.Count;
    }
}
