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
    private const string LongNotebook = "04-season-review";
    private const int GridAthletes = 200;

    // From pressing a key until the frame with the line's new sum is drawn, measured inside the page: a message posted in the frame's
    // callback comes when its layout and painting are done.
    private const string WatchKeys = """
        () => {
          window.waits = [];
          let pressed = 0;
          const drawn = new MessageChannel();
          drawn.port1.onmessage = message => window.waits.push(performance.now() - message.data);
          document.addEventListener('keydown', () => pressed = performance.now(), true);
          new MutationObserver(() => { const at = pressed; if (!at) return; pressed = 0; requestAnimationFrame(() => drawn.port2.postMessage(at)); })
            .observe(document.querySelector('table.grid'), { subtree: true, childList: true, characterData: true });
        }
        """;

    private static readonly string[] AllParts = ["start", "question", "memory", "keys", "idle"];

    public override string Name => "workbench-budgets";

    public override string Summary => "Measures the browser workbench: command to page, question to findings, key to screen, memory, idle notebooks.";

    public override string Usage => """
        workbench-budgets --workbench PATH [--repeats 5] [--parts start,question,memory,keys,idle] [--idle-minutes 10] [--out FILE]
          --workbench     the published executable, or the built SquadAnalytics.Workbench.dll
          --parts         what is measured; everything where it is not said
          --idle-minutes  how long the idle notebook is waited for
          --out           a file for the table with commit and machine
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var workbench = Option(arguments, "--workbench") ?? throw new ArgumentException("Name the executable: --workbench PATH.", nameof(arguments));
        var repeats = int.Parse(Option(arguments, "--repeats") ?? "5", CultureInfo.InvariantCulture);
        var idle = double.Parse(Option(arguments, "--idle-minutes") ?? "10", CultureInfo.InvariantCulture);
        var parts = Option(arguments, "--parts")?.Split(',') ?? AllParts;
        if (parts.Except(AllParts).FirstOrDefault() is { } unknown) throw new ArgumentException($"There is no part {unknown}; there are {string.Join(", ", AllParts)}.", nameof(arguments));
        var folder = Directory.CreateTempSubdirectory("workbench-budgets-").FullName;
        try
        {
            var table = MeasureAsync(new(Path.GetFullPath(workbench), folder, repeats, TimeSpan.FromMinutes(idle)), parts).GetAwaiter().GetResult();
            Console.WriteLine(table);
            if (Option(arguments, "--out") is { } file) File.WriteAllText(file, table);
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> MeasureAsync(Bench bench, string[] parts)
    {
        SampleFolder.Save(SquadGenerator.Generate(Scenarios.Quillmere), bench.Sample);
        SampleFolder.Save(SquadGenerator.Generate(Scenarios.Brackenholt), bench.Large);
        Enlarge(bench.Large);
        await using var browser = await MeasuringBrowser.StartAsync();
        await (await browser.WindowAsync()).Context.CloseAsync();
        var waits = new List<string>();
        if (parts.Contains("start")) waits.Add(Row("command to usable page", "2 s", await StartsAsync(bench, browser), "s"));
        if (parts.Contains("question"))
        {
            waits.Add(Row("warm question, click to findings", "1 s", await QuestionsAsync(bench, browser, Notebook), "s"));
            waits.Add(Row("the same for the season review", "", await QuestionsAsync(bench, browser, LongNotebook), "s"));
        }

        if (parts.Contains("keys"))
        {
            var keys = await KeysAsync(bench, browser);
            waits.Add(Row($"key to screen, grid of {GridAthletes} athletes, key by key", "50 ms", keys.Singly, "ms"));
            waits.Add(Row("the same, in the first cell after the page was opened", "", keys.First, "ms"));
        }

        var memory = parts.Contains("memory") ? await MemoryAsync(bench, browser) : [];
        var idle = parts.Contains("idle") ? await IdleAsync(bench, browser) : null;
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"""
            # What a person waits for in the browser

            Job `workbench-budgets --repeats {bench.Repeats}`, commit {Provenance.Commit()}, {Provenance.Machine()}. The browser runs on the same machine.

            """));
        if (waits.Count > 0) text.Append("\n| what | goal | median | slowest | times |\n| --- | ---: | ---: | ---: | ---: |\n").AppendJoin('\n', waits).Append('\n');
        if (memory.Count > 0)
        {
            text.Append("\n| memory (proportional set size) | goal | MB |\n| --- | ---: | ---: |\n");
            foreach (var line in memory) text.Append(CultureInfo.InvariantCulture, $"| {line.What} | {line.Goal} | {line.Bytes >> 20} |\n");
        }

        if (idle is not null) text.Append(CultureInfo.InvariantCulture, $"\n{idle}\n");
        return text.ToString();
    }

    private static string Row(string what, string goal, IReadOnlyList<double> values, string unit)
    {
        var sorted = values.Order().ToList();
        return string.Create(CultureInfo.InvariantCulture, $"| {what} | {goal} | {sorted[sorted.Count / 2]:0.00} {unit} | {sorted[^1]:0.00} {unit} | {sorted.Count} |");
    }

    private static async Task<List<double>> StartsAsync(Bench bench, MeasuringBrowser browser)
    {
        var starts = new List<double>();
        for (var repeat = 0; repeat < bench.Repeats; repeat++)
        {
            var page = await browser.WindowAsync();
            var clock = Stopwatch.GetTimestamp();
            await using var served = ServedLogbook.Start(bench.Workbench, bench.Sample);
            await page.GotoAsync((await served.NextAddressAsync()).AbsoluteUri, new() { WaitUntil = WaitUntilState.Commit });

            // Nothing is drawn before the connection is there: a heading means that the page answers.
            await page.Locator("h1").First.WaitForAsync();
            starts.Add(Stopwatch.GetElapsedTime(clock).TotalSeconds);
            await page.Context.CloseAsync();
        }

        return starts;
    }

    private static async Task<List<double>> QuestionsAsync(Bench bench, MeasuringBrowser browser, string notebook)
    {
        await using var served = ServedLogbook.Start(bench.Workbench, bench.Sample);
        var (page, address) = await EnterAsync(served, browser);
        var answers = new List<double>();
        for (var repeat = 0; repeat <= bench.Repeats; repeat++)
        {
            await page.GotoAsync(new Uri(address, $"/questions/{notebook}").AbsoluteUri);
            await Button(page, "Ask").WaitForAsync();

            // The spare process practises while a person reads the form.
            await Task.Delay(TimeSpan.FromSeconds(8));
            var clock = Stopwatch.GetTimestamp();
            await Button(page, "Ask").ClickAsync();
            // Looked for before every drawing: a locator looks ever more seldom, at 0.4 s and then at 0.9 s.
            await page.WaitForFunctionAsync("() => document.querySelector('section[aria-label=Answer] ol.findings > li')");
            if (repeat > 0) answers.Add(Stopwatch.GetElapsedTime(clock).TotalSeconds);
        }

        await page.Context.CloseAsync();
        return answers;
    }

    private static async Task<IReadOnlyList<Memory>> MemoryAsync(Bench bench, MeasuringBrowser browser)
    {
        await using var served = ServedLogbook.Start(bench.Workbench, bench.Sample);
        var (page, address) = await EnterAsync(served, browser);
        await page.GotoAsync(new Uri(address, $"/questions/{Notebook}").AbsoluteUri);
        await Button(page, "Ask").ClickAsync();
        await page.Locator("section[aria-label=Answer] ol.findings > li").First.WaitForAsync();
        var server = ProcessMemory.Proportional(served.ProcessId);
        var names = new List<string> { Notebook };
        for (var copy = 2; copy <= 5; copy++)
        {
            names.Add($"copy-{copy}");
            Directory.CreateDirectory(Path.Combine(bench.Sample, "notebooks"));
            File.Copy(Path.Combine(Path.GetDirectoryName(bench.Workbench)!, "notebooks", Notebook + ".ipynb"), Path.Combine(bench.Sample, "notebooks", names[^1] + ".ipynb"), overwrite: true);
        }

        long one = 0;
        foreach (var name in names)
        {
            var window = await page.Context.NewPageAsync();
            await window.GotoAsync(new Uri(address, $"/cells/{name}").AbsoluteUri);
            await Button(window, "Run all").ClickAsync();
            await window.Locator("article.code").Last.Locator("iframe.shown").WaitForAsync();
            if (one == 0) one = ProcessMemory.ChildrenOf(served.ProcessId).Select(ProcessMemory.Proportional).Max();
        }

        // With the spare process that the next question would take.
        await page.GotoAsync(new Uri(address, $"/questions/{Notebook}").AbsoluteUri);
        await Button(page, "Ask").WaitForAsync();
        await Task.Delay(TimeSpan.FromSeconds(5));
        var children = ProcessMemory.ChildrenOf(served.ProcessId);
        var all = ProcessMemory.Proportional(served.ProcessId) + children.Sum(ProcessMemory.Proportional);
        await page.Context.CloseAsync();
        return [new("server after a question", "", server), new("one used notebook", "", one), new($"five used notebooks, server and spare ({children.Count} children)", "2500", all)];
    }

    private static async Task<Keys> KeysAsync(Bench bench, MeasuringBrowser browser)
    {
        await using var served = ServedLogbook.Start(bench.Workbench, bench.Large);
        var (page, address) = await EnterAsync(served, browser);
        await page.GotoAsync(new Uri(address, "/logbook/type").AbsoluteUri);
        await page.Locator("input[data-grid-row='150']").First.WaitForAsync();
        await page.Locator("input[data-grid-row='0'][data-grid-column='1']").FocusAsync();
        await page.EvaluateAsync(WatchKeys);
        var first = 0;
        for (var row = 0; row < 20; row++)
        {
            foreach (var key in new[] { "6", "2", ".", "4", "Enter" })
            {
                await page.Keyboard.PressAsync(key);
                await Task.Delay(120);
            }

            if (row == 0) first = (await page.EvaluateAsync<double[]>("window.waits")).Length;
        }

        var waits = await page.EvaluateAsync<double[]>("window.waits");
        await page.Context.CloseAsync();
        return new(waits[..first], waits[first..]);
    }

    private static async Task<string> IdleAsync(Bench bench, MeasuringBrowser browser)
    {
        await using var served = ServedLogbook.Start(bench.Workbench, bench.Sample, "--idle-minutes", bench.Idle.TotalMinutes.ToString(CultureInfo.InvariantCulture));
        var (page, address) = await EnterAsync(served, browser);
        await page.GotoAsync(new Uri(address, $"/cells/{Notebook}").AbsoluteUri);
        await Button(page, "Run all").ClickAsync();
        await page.Locator("article.code").Last.Locator("iframe.shown").WaitForAsync();
        var clock = Stopwatch.GetTimestamp();
        var before = ProcessMemory.ChildrenOf(served.ProcessId).Count;
        var notice = page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "process was given up" });
        await notice.WaitForAsync(new() { Timeout = (float)(bench.Idle.TotalMilliseconds + 120_000) });
        var waited = Stopwatch.GetElapsedTime(clock);
        var after = ProcessMemory.ChildrenOf(served.ProcessId).Count;
        clock = Stopwatch.GetTimestamp();
        await Button(page, "Run all cells again").ClickAsync();
        await notice.WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await page.WaitForFunctionAsync("() => !document.querySelector('.cell-head .busy') && [...document.querySelectorAll('.cell-head .kind')].every(kind => kind.textContent !== 'waits for its turn')");
        var again = Stopwatch.GetElapsedTime(clock);
        await page.Context.CloseAsync();
        return string.Create(CultureInfo.InvariantCulture, $"A notebook with all its cells run lay idle: after {waited.TotalMinutes:0.0} minutes the page said that its process was given up (processes of the server: {before} before, {after} after); one click ran all its cells again in {again.TotalSeconds:0.0} s.");
    }

    private static async Task<(IPage Page, Uri Address)> EnterAsync(ServedLogbook served, MeasuringBrowser browser)
    {
        var page = await browser.WindowAsync();
        var address = await served.NextAddressAsync();
        await page.GotoAsync(address.AbsoluteUri);
        return (page, address);
    }

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static void Enlarge(string folder)
    {
        using var logbook = Logbook.Open(folder);
        var joined = logbook.Squad.Sessions.Min(session => session.Date);
        var more = Enumerable.Range(1, GridAthletes - logbook.Squad.Athletes.Count).Select(number => new Athlete($"x{number}", $"Invented {number:000}", $"X{number:000}") { Joined = joined });
        logbook.Commit(new LogbookChange("a large club") { Athletes = [.. more] });
    }

    private sealed record Memory(string What, string Goal, long Bytes);

    private sealed record Keys(IReadOnlyList<double> First, IReadOnlyList<double> Singly);

    private sealed record Bench(string Workbench, string Folder, int Repeats, TimeSpan Idle)
    {
        public string Sample { get; } = Path.Combine(Folder, "sample");

        public string Large { get; } = Path.Combine(Folder, "large");
    }
}
