using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using SquadAnalytics.Benchmarks.Browser;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Measures what a person waits for in the browser, and what memory the workbench takes.</summary>
internal sealed class WorkbenchBudgetsJob : Job
{
    private const string Notebook = "01-why-the-slowdown";
    private const int GridAthletes = 200;

    // From pressing a key to the frame after the line's sum has changed, measured inside the page.
    private const string WatchKeys = """
        () => {
          window.waits = [];
          let pressed = 0;
          document.addEventListener('keydown', () => pressed = performance.now(), true);
          new MutationObserver(() => { const at = pressed; if (!at) return; pressed = 0; requestAnimationFrame(() => window.waits.push(performance.now() - at)); })
            .observe(document.querySelector('table.grid'), { subtree: true, childList: true, characterData: true });
        }
        """;

    public override string Name => "workbench-budgets";

    public override string Summary => "Measures the browser workbench: command to page, question to findings, key to screen, memory.";

    public override string Usage => """
        workbench-budgets --workbench PATH [--repeats 5] [--out FILE]
          --workbench  the published executable, or the built SquadAnalytics.Workbench.dll
          --out        a file for the table with commit and machine
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var workbench = Option(arguments, "--workbench") ?? throw new ArgumentException("Name the executable: --workbench PATH.", nameof(arguments));
        var repeats = int.Parse(Option(arguments, "--repeats") ?? "5", CultureInfo.InvariantCulture);
        var folder = Directory.CreateTempSubdirectory("workbench-budgets-").FullName;
        try
        {
            var table = MeasureAsync(workbench, repeats, folder).GetAwaiter().GetResult();
            Console.WriteLine(table);
            if (Option(arguments, "--out") is { } file) File.WriteAllText(file, table);
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> MeasureAsync(string workbench, int repeats, string folder)
    {
        var sample = Path.Combine(folder, "sample");
        SampleFolder.Save(SquadGenerator.Generate(Scenarios.Quillmere), sample);
        var large = Path.Combine(folder, "large");
        SampleFolder.Save(SquadGenerator.Generate(Scenarios.Brackenholt), large);
        Enlarge(large);
        await using var browser = await MeasuringBrowser.StartAsync();
        await (await browser.WindowAsync()).CloseAsync();
        var starts = new List<double>();
        for (var repeat = 0; repeat < repeats; repeat++) starts.Add(await StartAsync(workbench, sample, browser));
        var (answers, memory) = await QuestionsAndMemoryAsync(workbench, sample, browser, repeats);
        var keys = await KeysAsync(workbench, large, browser);
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"""
            # What a person waits for in the browser

            Job `workbench-budgets --repeats {repeats}`, commit {Provenance.Commit()}, {Provenance.Machine()}. The browser runs on the same machine.

            | what | goal | median | slowest | times |
            | --- | ---: | ---: | ---: | ---: |
            {Row("command to usable page", "2 s", starts, 1, "s")}
            {Row("warm question, click to findings", "1 s", answers, 1, "s")}
            {Row($"key to screen, grid of {GridAthletes} athletes", "50 ms", keys, 1, "ms")}

            | memory (proportional set size) | goal | MB |
            | --- | ---: | ---: |

            """));
        foreach (var line in memory) text.Append(CultureInfo.InvariantCulture, $"| {line.What} | {line.Goal} | {line.Bytes >> 20} |\n");
        return text.ToString();
    }

    private static string Row(string what, string goal, List<double> values, double scale, string unit)
    {
        var sorted = values.Order().ToList();
        return string.Create(CultureInfo.InvariantCulture, $"| {what} | {goal} | {sorted[sorted.Count / 2] * scale:0.00} {unit} | {sorted[^1] * scale:0.00} {unit} | {sorted.Count} |");
    }

    private static async Task<double> StartAsync(string workbench, string logbook, MeasuringBrowser browser)
    {
        var page = await browser.WindowAsync();
        var clock = Stopwatch.GetTimestamp();
        await using var served = ServedLogbook.Start(workbench, logbook);
        await page.GotoAsync((await served.NextAddressAsync()).AbsoluteUri, new() { WaitUntil = WaitUntilState.Commit });
        await page.Locator("h1").First.WaitForAsync();
        var seconds = Stopwatch.GetElapsedTime(clock).TotalSeconds;
        await page.Context.CloseAsync();
        return seconds;
    }

    private static async Task<(List<double> Answers, IReadOnlyList<Memory> Memory)> QuestionsAndMemoryAsync(string workbench, string logbook, MeasuringBrowser browser, int repeats)
    {
        await using var served = ServedLogbook.Start(workbench, logbook);
        var page = await browser.WindowAsync();
        var first = await served.NextAddressAsync();
        await page.GotoAsync(first.AbsoluteUri);
        var answers = new List<double>();
        for (var repeat = 0; repeat <= repeats; repeat++)
        {
            await page.GotoAsync(new Uri(first, $"/questions/{Notebook}").AbsoluteUri);
            await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).WaitForAsync();

            // The spare process warms up while a person reads the form.
            await Task.Delay(TimeSpan.FromSeconds(4));
            var clock = Stopwatch.GetTimestamp();
            await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
            await page.Locator("section[aria-label=Answer] ol.findings > li").First.WaitForAsync();
            if (repeat > 0) answers.Add(Stopwatch.GetElapsedTime(clock).TotalSeconds);
        }

        var server = ProcessMemory.Proportional(served.ProcessId);
        var names = new List<string> { Notebook };
        for (var copy = 2; copy <= 5; copy++)
        {
            names.Add($"copy-{copy}");
            Directory.CreateDirectory(Path.Combine(logbook, "notebooks"));
            File.Copy(Path.Combine(Path.GetDirectoryName(workbench)!, "notebooks", Notebook + ".ipynb"), Path.Combine(logbook, "notebooks", names[^1] + ".ipynb"), overwrite: true);
        }

        var before = ProcessMemory.ChildrenOf(served.ProcessId).ToHashSet();
        long one = 0;
        foreach (var name in names)
        {
            var window = await page.Context.NewPageAsync();
            await window.GotoAsync(new Uri(first, $"/cells/{name}").AbsoluteUri);
            await window.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
            await window.Locator("article.code").Last.Locator("iframe.shown").WaitForAsync();
            if (one == 0) one = ProcessMemory.ChildrenOf(served.ProcessId).Select(ProcessMemory.Proportional).Max();
        }

        var all = ProcessMemory.Proportional(served.ProcessId) + ProcessMemory.ChildrenOf(served.ProcessId).Sum(ProcessMemory.Proportional);
        return (answers, [new("server after the questions", "", server), new("one used notebook", "", one), new($"five used notebooks, server and spare ({ProcessMemory.ChildrenOf(served.ProcessId).Count} children)", "2500", all)]);
    }

    private static async Task<List<double>> KeysAsync(string workbench, string logbook, MeasuringBrowser browser)
    {
        await using var served = ServedLogbook.Start(workbench, logbook);
        var page = await browser.WindowAsync();
        var first = await served.NextAddressAsync();
        await page.GotoAsync(first.AbsoluteUri);
        await page.GotoAsync(new Uri(first, "/logbook/type").AbsoluteUri);
        await page.Locator("input[data-grid-row='150']").First.WaitForAsync();
        await page.Locator("input[data-grid-row='0'][data-grid-column='1']").FocusAsync();
        await page.EvaluateAsync(WatchKeys);
        for (var row = 0; row < 20; row++)
        {
            foreach (var key in new[] { "6", "2", ".", "4", "Enter" })
            {
                await page.Keyboard.PressAsync(key);
                await Task.Delay(120);
            }
        }

        // The first keys also pay for what is compiled once.
        return [.. (await page.EvaluateAsync<double[]>("window.waits")).Skip(5)];
    }

    private static void Enlarge(string folder)
    {
        using var logbook = Logbook.Open(folder);
        var joined = logbook.Squad.Sessions.Min(session => session.Date);
        var more = Enumerable.Range(1, GridAthletes - logbook.Squad.Athletes.Count).Select(number => new Athlete($"x{number}", $"Invented {number:000}", $"X{number:000}") { Joined = joined });
        logbook.Commit(new LogbookChange("a large club") { Athletes = [.. more] });
    }

    private sealed record Memory(string What, string Goal, long Bytes);
}
