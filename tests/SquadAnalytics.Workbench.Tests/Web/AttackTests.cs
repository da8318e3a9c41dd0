using System.IO.Compression;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Hostile data and files, brought in through the page.</summary>
[Collection(SharedBrowser.Name)]
public sealed partial class AttackTests(TestBrowser browser, HostileWorkbench workbench) : BrowserTests(browser), IClassFixture<HostileWorkbench>
{
    private const long Gigabyte = 1L << 30;

    [Theory]
    [InlineData("/logbook", HostileWorkbench.Boxer)]
    [InlineData("/logbook/athletes", HostileWorkbench.Boxer)]
    [InlineData("/logbook/type", HostileWorkbench.Boxer)]
    [InlineData("/logbook/days", HostileWorkbench.Boxer)]
    [InlineData("/logbook/blocks", HostileWorkbench.Boxer)]
    [InlineData("/logbook/blocks", HostileWorkbench.Block)]
    [InlineData("/logbook/protocols", HostileWorkbench.Protocol)]
    [InlineData("/questions/01-why-the-slowdown", HostileWorkbench.Boxer)]
    [InlineData("/questions/03-two-blocks", HostileWorkbench.Block)]
    public async Task Script_in_a_name_is_text_on_every_page(string place, string name)
    {
        var page = await workbench.Open(Browser, place);
        await AssertText(page, name);
    }

    [Fact]
    public async Task Script_in_a_name_is_text_where_the_sheet_says_who_is_not_cleared()
    {
        var page = await workbench.Open(Browser, "/logbook/sheet");
        await page.GetByLabel("Protocol").SelectOptionAsync(Read(squad => squad.SessionsOf(squad.Athletes.Single(athlete => athlete.DisplayName == HostileWorkbench.NotCleared).Id)[^1].Protocol.Id));
        await AssertText(page, HostileWorkbench.NotCleared);
    }

    [Fact]
    public async Task Script_in_a_files_name_and_cells_is_text_in_the_preview_and_among_the_rows_that_wait()
    {
        const string file = "<img src=x>.csv", cell = "<img src=x onerror=\"document.title='taken'\">";
        var path = Path.Combine(workbench.Folder, file);
        await File.WriteAllTextAsync(path, $"Name;Date;Protocol;Set 1;Set 2;Set 3\n{Quoted(HostileWorkbench.Boxer)};2035-03-01;Tall Three;61.2;62.1;63.0\n{Quoted(HostileWorkbench.Boxer)};2035-03-02;Tall Three;{Quoted(cell)};62.1;63.0\n{Quoted(cell)};2035-03-01;Tall Three;61.2;62.1;63.0\n");
        var page = await workbench.Open(Browser, "/logbook/files");
        await page.Locator("input[type=file]").SetInputFilesAsync(path);
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("3 rows read: 1 kept, 1 refused, 1 awaiting a decision");
        foreach (var text in new[] { HostileWorkbench.Boxer, file, $"'{cell}'", $"Who is '{cell}'?" }) await AssertText(page, text);

        await page.GetByRole(AriaRole.Button, new() { Name = "Keep 1 session" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Rows still waiting" })).ToBeVisibleAsync();
        foreach (var text in new[] { file, $"'{cell}'" }) await AssertText(page, text);
        await page.GotoAsync(new Uri(workbench.Address, "/logbook").AbsoluteUri);
        await AssertText(page, file);
        await page.Locator("fluent-button", new() { HasText = "Take back:" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Taken back:")).ToBeVisibleAsync();
        await AssertText(page, file);

        static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    [Fact]
    public async Task Script_in_a_name_is_text_in_an_answer_its_report_the_reports_side_by_side_and_the_sheet()
    {
        var page = await workbench.Open(Browser, "/questions/01-why-the-slowdown");
        await page.GetByLabel("Boxer").SelectOptionAsync(Read(squad => squad.Athletes[0].Code));
        for (var run = 0; run < 2; run++)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
            await page.Locator("section[aria-label=Answer] ol.findings > li").First.WaitForAsync(new() { Timeout = 300_000 });
        }

        await AssertText(page, HostileWorkbench.Boxer);
        var address = await page.Locator("iframe.report").GetAttributeAsync("src");
        await page.GotoAsync(new Uri(workbench.Address, "/reports/beside").AbsoluteUri);
        await AssertText(page, HostileWorkbench.Boxer);
        foreach (var alone in new[] { "/" + address, $"/sheet/html?protocol=tall-three&date={Read(squad => squad.Sessions[^1].Date):yyyy-MM-dd}&stations=False&codes=False" })
        {
            await page.GotoAsync(new Uri(workbench.Address, alone).AbsoluteUri);
            await AssertText(page, HostileWorkbench.Boxer);
        }
    }

    [Fact]
    public async Task A_file_of_a_gigabyte_is_refused_without_being_read_in()
    {
        var path = Path.Combine(workbench.Folder, "huge.csv");
        await using (var file = File.Create(path)) file.SetLength(Gigabyte);
        var page = await workbench.Open(Browser, "/logbook/files");
        await page.Locator("input[type=file]").SetInputFilesAsync(path);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("64 MB");
        Assert.True(Memory() < Gigabyte, $"The server holds {Memory() >> 20} MB.");
    }

    [Fact]
    public async Task A_request_with_a_gigabyte_in_it_is_turned_away_before_the_gigabyte_is_sent()
    {
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
        var cookie = (await client.GetAsync(await workbench.NextFirstAddress())).Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        using var tcp = new TcpClient();
        await tcp.ConnectAsync(IPAddress.Loopback, workbench.Address.Port);
        await using var stream = tcp.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST /_blazor/negotiate?negotiateVersion=1 HTTP/1.1\r\nHost: {workbench.Address.Authority}\r\nOrigin: http://{workbench.Address.Authority}\r\nCookie: {cookie}\r\nContent-Type: text/plain\r\nContent-Length: {Gigabyte}\r\n\r\n"));
        using var reader = new StreamReader(stream);
        var answer = await reader.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60));

        // Answered without the body having been sent, and then the connection is closed rather than read on.
        Assert.StartsWith("HTTP/1.1 413 ", answer, StringComparison.Ordinal);
        Assert.True(Memory() < Gigabyte, $"The server holds {Memory() >> 20} MB.");
    }

    [Fact]
    public async Task A_workbook_that_unpacks_to_gigabytes_is_refused_and_the_page_goes_on()
    {
        var path = Path.Combine(workbench.Folder, "bomb.xlsx");
        using (var archive = ZipFile.Open(path, ZipArchiveMode.Create))
        {
            Entry(archive, "[Content_Types].xml", """<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>""");
            Entry(archive, "_rels/.rels", """<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>""");
            Entry(archive, "xl/workbook.xml", """<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="A" sheetId="1" r:id="r1"/></sheets></workbook>""");
            Entry(archive, "xl/_rels/workbook.xml.rels", """<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>""");
            using var sheet = archive.CreateEntry("xl/worksheets/sheet1.xml", CompressionLevel.Fastest).Open();
            sheet.Write("""<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>"""u8);
            var rows = Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat("<row><c t=\"inlineStr\"><is><t>aaaaaaaaaaaaaaaa</t></is></c></row>", 16_000)));
            for (var megabyte = 0; megabyte < 1500; megabyte++) sheet.Write(rows);
        }

        Assert.True(new FileInfo(path).Length < 64 << 20);
        var page = await workbench.Open(Browser, "/logbook/files");
        await page.Locator("input[type=file]").SetInputFilesAsync(path);
        await Assertions.Expect(page.Locator(".problem").First).ToContainTextAsync("unpacks to more than 256 MB", new() { Timeout = 180_000 });
        Assert.True(Memory() < Gigabyte, $"The server holds {Memory() >> 20} MB.");
        await page.GotoAsync(new Uri(workbench.Address, "/logbook").AbsoluteUri);
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_name_of_a_notebook_cannot_climb_out_of_its_folder()
    {
        Directory.CreateDirectory(Path.Combine(workbench.Folder, "logbook", "notebooks"));
        NotebookFile.Write(new Notebook([new NotebookCell(CellKind.Markdown, "beyond the fence")]), Path.Combine(workbench.Folder, "outside.ipynb"));
        var page = await workbench.Open(Browser, "/cells/..%2F..%2Foutside");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("There is no such notebook");
        await Assertions.Expect(page.GetByText("beyond the fence")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_formula_typed_as_a_name_is_inert_text_in_every_table_that_leaves()
    {
        const string formula = "=HYPERLINK(\"http://127.0.0.1:1/\";\"times\")", code = "@SUM(A1)";
        var page = await workbench.Open(Browser, "/logbook/athletes");
        Athlete renamed;
        DateOnly day;
        using (var logbook = Logbook.Open(Path.Combine(workbench.Folder, "logbook")))
        {
            day = logbook.Squad.Sessions[^1].Date;
            renamed = logbook.Squad.Athlete(logbook.Squad.Sessions[^1].AthleteId);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = $"Change {renamed.DisplayName}", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = $"Change {renamed.DisplayName}", Exact = true })).ToBeVisibleAsync();
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(formula);
        await page.GetByLabel("Code", new() { Exact = true }).FillAsync(code);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = formula })).ToBeVisibleAsync();

        await page.GotoAsync(new Uri(workbench.Address, "/questions/02-this-week").AbsoluteUri);
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        await page.Locator("section[aria-label=Answer] ol.findings > li").First.WaitForAsync(new() { Timeout = 300_000 });
        await page.GotoAsync(new Uri(workbench.Address, "/reports").AbsoluteUri);
        var tables = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { NameRegex = new("^tables of ") }).First.ClickAsync());
        var leaving = new List<string>();
        using (var archive = ZipFile.OpenRead(await tables.PathAsync()))
        {
            foreach (var entry in archive.Entries.Where(entry => entry.Name.EndsWith(".csv", StringComparison.Ordinal)))
            {
                using var reader = new StreamReader(entry.Open());
                leaving.Add(await reader.ReadToEndAsync());
            }
        }

        var sheet = await page.Context.APIRequest.GetAsync(new Uri(workbench.Address, $"/sheet/csv?protocol=tall-three&date={day:yyyy-MM-dd}&stations=False&codes=False").AbsoluteUri);
        leaving.Add(await sheet.TextAsync());
        leaving.AddRange(Directory.EnumerateFiles(Path.Combine(workbench.Folder, "logbook"), "*.csv").Select(File.ReadAllText));
        var fields = leaving.SelectMany(Fields).ToList();
        Assert.Contains("'" + formula, fields);
        Assert.Contains("'" + code, fields);
        Assert.DoesNotContain(fields, field => field.Length > 0 && "=+-@\t\r".Contains(field[0], StringComparison.Ordinal) && !double.TryParse(field, System.Globalization.CultureInfo.InvariantCulture, out _));

        // Pasted from a spreadsheet the name is the same boxer's, and text as before.
        await page.GotoAsync(new Uri(workbench.Address, "/logbook/files").AbsoluteUri);
        await page.GetByLabel("or paste from a spreadsheet").FillAsync($"Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\n{formula}\t2035-03-01\tTall Three\t61.2\t62.1\t63.0\n");
        await page.GetByLabel("or paste from a spreadsheet").BlurAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Read what was pasted" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("1 row read: 1 kept");
    }

    [Theory]
    [InlineData("select * from read_csv('/etc/passwd')", "neither files nor settings")]
    [InlineData("select * from '/etc/passwd'", "There is no table")]
    [InlineData("copy sessions to '/tmp/taken.csv'", "Only queries can be run")]
    [InlineData("install httpfs", "Only queries can be run")]
    [InlineData("select * from 'http://127.0.0.1:1/x.csv'", "There is no table")]
    [InlineData("attach '/tmp/other.db'", "Only queries can be run")]
    public async Task A_query_reaches_for_no_file_and_no_network(string query, string refusal)
    {
        var name = $"query-{Math.Abs(query.GetHashCode(StringComparison.Ordinal))}";
        Directory.CreateDirectory(Path.Combine(workbench.Folder, "logbook", "notebooks"));
        NotebookFile.Write(new Notebook([new NotebookCell(CellKind.Code, query) { Language = "sql" }]), Path.Combine(workbench.Folder, "logbook", "notebooks", name + ".ipynb"));
        var page = await workbench.Open(Browser, $"/cells/{name}");
        await ServedWorkbench.Consent(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator(".fault")).ToContainTextAsync(refusal, new() { Timeout = 180_000 });
        await Assertions.Expect(page.Locator("iframe.shown")).ToHaveCountAsync(0);
        Assert.False(File.Exists("/tmp/taken.csv") || File.Exists("/tmp/other.db"));
    }

    private static async Task AssertText(IPage page, string text)
    {
        await Assertions.Expect(page.GetByText(text).First).ToBeAttachedAsync();
        Assert.Equal(0, await page.Locator("img[src=x]").CountAsync());
        Assert.DoesNotContain("taken", await page.TitleAsync(), StringComparison.Ordinal);
    }

    private T Read<T>(Func<Squad, T> read)
    {
        using var logbook = Logbook.Open(Path.Combine(workbench.Folder, "logbook"));
        return read(logbook.Squad);
    }

    // Fields as a spreadsheet takes them, without the quotes around them.
    private static IEnumerable<string> Fields(string text) =>
        Field().Matches(text.TrimStart('\uFEFF')).Select(match => match.Groups["quoted"].Success ? match.Groups["quoted"].Value.Replace("\"\"", "\"", StringComparison.Ordinal) : match.Groups["plain"].Value);

    [GeneratedRegex("""(?:^|,)(?:"(?<quoted>(?:[^"]|"")*)"|(?<plain>[^,"\r\n]*))""", RegexOptions.Multiline)]
    private static partial Regex Field();

    private static void Entry(ZipArchive archive, string name, string text)
    {
        using var writer = new StreamWriter(archive.CreateEntry(name).Open());
        writer.Write(text);
    }

    private long Memory()
    {
        using var process = System.Diagnostics.Process.GetProcessById(workbench.ProcessId);
        return process.WorkingSet64;
    }
}

/// <summary>A server on a logbook with two boxers, one of them not cleared after a head knock, a protocol and a block whose names are markup.</summary>
public sealed class HostileWorkbench : ServedWorkbench
{
    private const string Markup = "<img src=x onerror=\"document.title='taken'\">";

    /// <summary>Name of a boxer.</summary>
    public const string Boxer = Markup + " Ox";

    /// <summary>Name of a boxer who is not cleared after a head knock.</summary>
    public const string NotCleared = Markup + " Knocked";

    /// <summary>Name of a protocol.</summary>
    public const string Protocol = Markup + " Three";

    /// <summary>Name of a block.</summary>
    public const string Block = Markup + " weeks";

    /// <inheritdoc />
    protected override void Prepare(string folder)
    {
        base.Prepare(folder);
        using var logbook = Logbook.Open(folder);
        var squad = logbook.Squad;
        var (day, last) = (squad.Sessions[0].Date, squad.Sessions[^1].Date);
        logbook.Commit(new LogbookChange("renamed")
        {
            Athletes = [squad.Athletes[0] with { DisplayName = Boxer }, squad.Athletes[1] with { DisplayName = NotCleared }],
            Events = [new AthleteEvent("knock", squad.Athletes[1].Id, day, EventKind.HeadKnock)],
            Protocols = [new Protocol("markup", Protocol, [new Station(Protocol, 8)], 3, null) { Bands = [new PerformanceBand(Protocol, new Seconds(100), new Seconds(120))] }],
            Blocks = [new TrainingBlock("markup", Block, day, last) { Emphasis = Block }],
        });
    }
}
