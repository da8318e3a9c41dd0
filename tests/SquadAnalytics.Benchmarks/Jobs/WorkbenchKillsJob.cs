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
    private static readonly TimeSpan BetweenKeys = TimeSpan.FromMilliseconds(60);

    public override string Name => "workbench-kills";

    public override string Summary => "Kills (SIGKILL) the server while somebody types or imports in the browser; at most the cell being typed may be missing.";

    public override string Usage => """
        workbench-kills --workbench PATH [--kills 500] [--seed 1] [--out FILE]
          --workbench  the published executable, or the built SquadAnalytics.Workbench.dll
          --out        a file for the table with seed, commit and machine
        Exit code 1 when a logbook did not open, more than the cell being typed was missing, or an import was kept in part.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var workbench = Option(arguments, "--workbench") ?? throw new ArgumentException("Name the executable: --workbench PATH.", nameof(arguments));
        var kills = int.Parse(Option(arguments, "--kills") ?? "500", CultureInfo.InvariantCulture);
        var seed = int.Parse(Option(arguments, "--seed") ?? "1", CultureInfo.InvariantCulture);
        var tally = KillAsync(workbench, kills, seed).GetAwaiter().GetResult();
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
        for (var kill = 0; kill < kills; kill++)
        {
            var folder = Directory.CreateTempSubdirectory("workbench-kills-").FullName;
            try
            {
                var logbook = Path.Combine(folder, "logbook");
                SampleFolder.Save(SquadGenerator.Generate(Scenarios.Brackenholt), logbook);
                tally = kill % 2 == 0
                    ? tally.WithTyping(await TypeAsync(workbench, logbook, browser, random))
                    : tally.WithImport(await ImportAsync(workbench, logbook, browser, random));
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        return tally with { Seconds = Stopwatch.GetElapsedTime(clock).TotalSeconds };
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

    private static async Task<KilledImport> ImportAsync(string workbench, string folder, MeasuringBrowser browser, Random random)
    {
        string[] names;
        int before;
        using (var logbook = Logbook.Open(folder))
        {
            names = [.. logbook.Squad.Athletes.Take(8).Select(athlete => athlete.DisplayName)];
            before = logbook.Squad.Sessions.Count;
        }

        await using var served = ServedLogbook.Start(workbench, folder);
        var page = await browser.WindowAsync();
        var first = await served.NextAddressAsync();
        await page.GotoAsync(first.AbsoluteUri);
        await page.GotoAsync(new Uri(first, "/logbook/files").AbsoluteUri);
        await page.GetByLabel("or paste from a spreadsheet").FillAsync("Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\n" + string.Concat(names.Select(name => $"{name}\t2035-03-01\tTall Three\t61.2\t62.1\t63.0\n")));
        await page.GetByLabel("or paste from a spreadsheet").BlurAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Read what was pasted" }).ClickAsync();
        var keep = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Keep [1-9]") });
        await keep.WaitForAsync();
        var accepting = keep.ClickAsync();
        await Task.Delay(TimeSpan.FromMilliseconds(random.NextDouble() * 120));
        await served.KillAsync();
        try
        {
            await accepting;
        }
        catch (PlaywrightException)
        {
            // The page noticed that its server is gone.
        }

        await page.Context.CloseAsync();
        try
        {
            using var logbook = Logbook.Open(folder);
            var more = logbook.Squad.Sessions.Count - before;
            return new(more == names.Length, more == 0 || more == names.Length ? null : $"{more} of {names.Length} sessions were kept");
        }
        catch (Exception error) when (error is IOException or LogbookContentException or FormatException)
        {
            return new(false, error.Message);
        }
    }
}
