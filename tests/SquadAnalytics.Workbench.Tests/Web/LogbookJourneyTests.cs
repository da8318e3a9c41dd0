using System.Globalization;
using Microsoft.Playwright;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Journeys of a coach who puts the logbook in order, each with a wrong turn in it.</summary>
[Collection(SharedBrowser.Name)]
public sealed class LogbookJourneyTests(TestBrowser browser, ServedWorkbench workbench) : BrowserTests(browser), IClassFixture<ServedWorkbench>
{
    [Fact]
    public async Task A_name_is_changed_once_shows_everywhere_and_the_old_one_still_matches_a_file()
    {
        var before = Read(logbook => logbook.Squad.Athlete(logbook.Squad.Sessions[^1].AthleteId)).DisplayName;
        var page = await workbench.Open(Browser, "/logbook/athletes");

        // Wrong turn: another boxer's name is begun, and left as it was.
        var other = Read(logbook => logbook.Squad.Athletes.First(athlete => athlete.DisplayName != before)).DisplayName;
        await Button(page, $"Change {other}").ClickAsync();
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Wrong Person");
        await Button(page, "Leave as it was").ClickAsync();
        await Button(page, $"Change {before}").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = $"Change {before}", Exact = true })).ToBeVisibleAsync();
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Ottilie Newname");
        await Button(page, "Keep").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "Ottilie Newname" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = other })).ToBeVisibleAsync();

        foreach (var place in new[] { "/logbook", "/logbook/days", "/questions/01-why-the-slowdown" })
        {
            await Go(page, place);
            await Assertions.Expect(page.GetByText("Ottilie Newname").First).ToBeAttachedAsync();
            await Assertions.Expect(page.GetByText(before)).ToHaveCountAsync(0);
        }

        await Go(page, "/logbook/files");
        await Paste(page, $"Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\n{before}\t2035-03-01\tTall Three\t61.2\t62\t63.0\n");
        await Assertions.Expect(page.GetByText("1 row read: 1 kept")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "Ottilie Newname" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Last_month_s_session_typed_under_the_wrong_date_moves_with_the_date()
    {
        var page = await workbench.Open(Browser, "/logbook/type");
        await Begin(page, "2035-05-10");
        await Type(page, 0, 1, "61.5");
        await page.GetByLabel("Date").FillAsync("2035-04-10");
        await page.GetByLabel("Date").BlurAsync();
        await Waiting.Until(() => Read(logbook => logbook.Drafts.Any(draft => draft.Cells.Any(cell => cell.Text == "2035-04-10"))));
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("Here is what was typed for 10 April 2035")).ToBeVisibleAsync();
        await Assertions.Expect(Cell(page, 0, 1)).ToHaveValueAsync("61.5");
        await Type(page, 0, 2, "1:02");
        await Keep(page);
        var dates = Read(logbook => logbook.Squad.Sessions.Where(session => session.TimesSeconds.SequenceEqual([61.5, 62])).Select(session => session.Date).ToList());
        Assert.Equal([new DateOnly(2035, 4, 10)], dates);
    }

    [Fact]
    public async Task Late_arrivals_join_a_session_that_is_being_typed_and_one_that_is_kept()
    {
        var page = await workbench.Open(Browser, "/logbook/type");
        await Begin(page, "2035-07-12");
        await Type(page, 0, 1, "66.6");

        // Somebody nobody knows comes in: added in a second window, with a code that is taken at first.
        var two = await page.Context.NewPageAsync();
        await two.GotoAsync(new Uri(workbench.Address, "/logbook/athletes").AbsoluteUri);
        await two.GetByLabel("Name", new() { Exact = true }).FillAsync("Aaron Latecome");
        await two.GetByLabel("Code", new() { Exact = true }).FillAsync(Read(logbook => logbook.Squad.Athletes[0].Code));
        await Button(two, "Keep").ClickAsync();
        await Assertions.Expect(two.GetByRole(AriaRole.Alert)).ToContainTextAsync("belongs to");
        await two.GetByLabel("Code", new() { Exact = true }).FillAsync("LATE");
        await Button(two, "Keep").ClickAsync();
        await Assertions.Expect(two.GetByRole(AriaRole.Rowheader, new() { Name = "Aaron Latecome" })).ToBeVisibleAsync();
        await Assertions.Expect(two.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0);
        var late = page.GetByLabel("Aaron Latecome, set 1");
        await late.FillAsync("70.1");
        await late.PressAsync("Enter");
        await Keep(page);
        Assert.Equal([66.6, 70.1], FirstSets());

        // Another comes when the session is kept already: what is there stays.
        await Go(page, "/logbook/type");
        await Begin(page, "2035-07-12");
        await Assertions.Expect(late).ToHaveValueAsync("70.1");
        var row = await page.Locator("input[data-grid-column='1']").EvaluateAllAsync<int>("cells => cells.findIndex(cell => cell.value === '')");
        await Type(page, row, 1, "68.2");
        await Keep(page);
        Assert.Equal([66.6, 68.2, 70.1], FirstSets());

        double[] FirstSets() => Read(logbook => logbook.Squad.Sessions.Where(session => session.Date == new DateOnly(2035, 7, 12)).Select(session => session.TimesSeconds[0]).Order().ToArray());
    }

    [Fact]
    public async Task A_session_is_left_out_with_a_reason_and_counted_again()
    {
        var day = Read(logbook => logbook.Squad.Sessions.Where(session => !session.IsVoid).GroupBy(session => session.Date).OrderBy(group => group.Key).Last().ToList());
        var names = Read(logbook => day.Select(session => logbook.Squad.Athlete(session.AthleteId).DisplayName).ToList());
        var page = await workbench.Open(Browser, "/logbook");

        // Wrong turn: the wrong boxer's session, counted again at once.
        await LeaveOut(page, names[1], "the watch was stopped late");
        await Assertions.Expect(page.GetByText("void: the watch was stopped late")).ToBeVisibleAsync();
        await Axe.AssertNothing(page);
        await Button(page, $"Count again the session of {names[1]}").ClickAsync();
        await Assertions.Expect(page.GetByText("void: the watch was stopped late")).ToHaveCountAsync(0);
        await LeaveOut(page, names[0], "the watch was stopped late");
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("void: the watch was stopped late")).ToHaveCountAsync(1);
        Assert.Equal([day[0].Id], Read(logbook => logbook.Squad.Sessions.Where(session => session.VoidReason == "the watch was stopped late").Select(session => session.Id).ToList()));
        await Button(page, $"Count again the session of {names[0]}").ClickAsync();
        await Waiting.Until(() => Read(logbook => logbook.Squad.Sessions.All(session => session.VoidReason != "the watch was stopped late")));
    }

    [Fact]
    public async Task A_person_is_removed_only_after_the_right_code_and_from_every_file()
    {
        var gone = Read(logbook => logbook.Squad.Athlete(logbook.Squad.Sessions[0].AthleteId));
        var page = await workbench.Open(Browser, "/logbook/athletes");
        await Button(page, $"Change {gone.DisplayName}").ClickAsync();
        await Button(page, "Remove this person").ClickAsync();
        await page.Locator(".warn").GetByLabel("Code").FillAsync("nobody");
        await Assertions.Expect(Button(page, "Erase")).ToBeDisabledAsync();
        await Axe.AssertNothing(page);
        await Button(page, "Do not").ClickAsync();
        Assert.Contains(gone.Id, Read(logbook => logbook.Squad.Athletes.Select(athlete => athlete.Id).ToList()));

        await Button(page, "Remove this person").ClickAsync();
        await page.Locator(".warn").GetByLabel("Code").FillAsync(gone.Code);
        await Button(page, "Erase").ClickAsync();
        await Assertions.Expect(page.GetByText($"{gone.Code} was erased")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = gone.DisplayName })).ToHaveCountAsync(0);
        Assert.DoesNotContain(Directory.EnumerateFiles(LogbookFolder, "*", SearchOption.AllDirectories).Where(file => Path.GetFileName(file) != ".lock"), file => File.ReadAllText(file).Contains(gone.DisplayName, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_backup_is_restored_into_a_new_folder_and_never_over_another()
    {
        var page = await workbench.Open(Browser, "/logbook/keeping");
        var zip = Path.Combine(workbench.Folder, "kept.zip");
        var taken = Directory.CreateDirectory(Path.Combine(workbench.Folder, "taken")).FullName;
        await File.WriteAllTextAsync(Path.Combine(taken, "mine.txt"), "mine");
        await page.GetByLabel("File", new() { Exact = true }).FillAsync(zip);
        await Button(page, "Back up").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Backed up to");

        await page.GetByLabel("Backup", new() { Exact = true }).FillAsync(zip);
        await page.GetByLabel("New folder").FillAsync(taken);
        await Button(page, "Restore").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
        Assert.Equal(["mine.txt"], Directory.EnumerateFileSystemEntries(taken).Select(Path.GetFileName));
        await Axe.AssertNothing(page);

        var anew = Path.Combine(workbench.Folder, "anew");
        await page.GetByLabel("New folder").FillAsync(anew);
        await Button(page, "Restore").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Restored.");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0);
        using var restored = Logbook.Open(anew);
        Assert.Equal(Read(logbook => logbook.Fingerprint), restored.Fingerprint);
    }

    [Fact]
    public async Task Two_windows_write_down_one_day_and_neither_takes_from_the_other()
    {
        var one = await workbench.Open(Browser, "/logbook/days");
        var two = await one.Context.NewPageAsync();
        await two.GotoAsync(one.Url);
        var day = new DateOnly(2035, 12, 3);
        foreach (var window in new[] { one, two })
        {
            await window.GetByLabel("Date").First.FillAsync("2035-12-03");
            await window.GetByLabel("Date").First.BlurAsync();
            await Assertions.Expect(Cell(window, 0, 1)).ToHaveValueAsync("");
        }

        // One keeps, with a second click; the other goes along and keeps what it had typed beside it.
        await Cell(two, 1, 4).FillAsync("6.5");
        await Cell(two, 1, 4).BlurAsync();
        await Cell(one, 0, 1).FillAsync("7");
        await Cell(one, 0, 1).BlurAsync();
        await TwiceAsync(Button(one, "Keep the day"));
        await Assertions.Expect(one.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept for 1 athlete.");
        await Assertions.Expect(Cell(two, 0, 1)).ToHaveValueAsync("7");
        await Button(two, "Keep the day").ClickAsync();
        await Assertions.Expect(two.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept for 1 athlete.");
        var kept = Read(logbook => logbook.Squad.Contexts.Where(context => context.Date == day).ToList());
        Assert.Contains(kept, context => context.SessionRpe == 7);
        Assert.Contains(kept, context => context.SleepHours == 6.5);
    }

    [Fact]
    public async Task What_was_typed_for_a_day_is_asked_about_before_it_is_left()
    {
        var page = await workbench.Open(Browser, "/logbook/days");
        await page.GetByLabel("Date").First.FillAsync("2035-12-05");
        await page.GetByLabel("Date").First.BlurAsync();
        await Assertions.Expect(Cell(page, 0, 4)).ToHaveValueAsync("");
        await Cell(page, 0, 4).FillAsync("7.5");
        await Cell(page, 0, 4).BlurAsync();

        // Wrong turns: another day, and another page.
        await page.GetByRole(AriaRole.Button, new() { Name = "Earlier" }).ClickAsync();
        await Button(page, "Go on typing").ClickAsync();
        await Assertions.Expect(Cell(page, 0, 4)).ToHaveValueAsync("7.5");
        await Assertions.Expect(page.GetByLabel("Date").First).ToHaveValueAsync("2035-12-05");
        await page.GetByRole(AriaRole.Link, new() { Name = "Blocks" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("What was typed for 5 December 2035 is not kept yet.");
        await Axe.AssertNothing(page);
        await Button(page, "Keep it").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Training blocks");
        Assert.Contains(Read(logbook => logbook.Squad.Contexts.ToList()), context => context.Date == new DateOnly(2035, 12, 5) && context.SleepHours == 7.5);

        // Answered with the button below: the question does not come back with the next entry.
        await Go(page, "/logbook/days");
        await Cell(page, 1, 4).FillAsync("6.75");
        await page.GetByRole(AriaRole.Button, new() { Name = "Earlier" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(1);
        await Button(page, "Keep the day").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("Kept for 1 athlete.");
        await Cell(page, 1, 4).FillAsync("6.77");
        await Cell(page, 1, 4).BlurAsync();
        // The button comes on after the server has seen the entry.
        await page.Locator("form input[type=date]").FillAsync("2035-12-06");
        await page.Locator("form select").First.SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await Assertions.Expect(Button(page, "Add the event")).ToBeEnabledAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0, new() { Timeout = 5_000 });
        await Cell(page, 1, 4).BlurAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Blocks" }).ClickAsync();
        await Button(page, "Forget it").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Training blocks");
        Assert.DoesNotContain(Read(logbook => logbook.Squad.Contexts.ToList()), context => context.SleepHours == 6.77);
    }

    [Fact]
    public async Task A_nickname_on_the_clipboard_is_given_to_a_boxer_and_known_the_next_time()
    {
        var page = await workbench.Open(Browser, "/logbook/files");
        await Paste(page, "Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\nThe Heron\t2035-09-10\tTall Three\t61.2\t62\t63.0\n");
        var somebody = page.GetByLabel("An athlete of the squad");
        var (name, id) = Read(logbook => logbook.Squad.Athletes.Select(athlete => (athlete.DisplayName, athlete.Id)).First());
        await somebody.SelectOptionAsync(new SelectOptionValue { Label = name });
        await Axe.AssertNothing(page);
        await Button(page, "This one").ClickAsync();
        await Button(page, "Keep 1 session").ClickAsync();
        await Assertions.Expect(page.GetByText("1 session is in the logbook.")).ToBeVisibleAsync();
        Assert.Equal(id, Read(logbook => logbook.Squad.Sessions.Single(session => session.Date == new DateOnly(2035, 9, 10)).AthleteId));
        Assert.Contains("The Heron", Read(logbook => logbook.Squad.Athlete(id).Aliases));
        await Go(page, "/logbook");
        await page.Locator("fluent-button", new() { HasText = "Take back: import" }).ClickAsync();
        await Waiting.Until(() => Read(logbook => logbook.Squad.Athlete(id).Aliases.Count == 0));
    }

    [Fact]
    public async Task A_second_click_adds_nothing_twice_and_takes_nothing_back()
    {
        var page = await workbench.Open(Browser, "/logbook/athletes");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Zeno Doubleclick");
        await page.GetByLabel("Code", new() { Exact = true }).FillAsync("ZDO");
        await page.GetByLabel("Code", new() { Exact = true }).BlurAsync();
        await TwiceAsync(Button(page, "Keep"));
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "Zeno Doubleclick" })).ToHaveCountAsync(1);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0);

        await Go(page, "/logbook/files");
        await Paste(page, "Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\nZeno Doubleclick\t2035-09-06\tTall Three\t61.2\t62\t63.0\n");
        await TwiceAsync(Button(page, "Keep 1 session"));
        await Assertions.Expect(page.GetByText("1 session is in the logbook.")).ToBeVisibleAsync();
        await Go(page, "/logbook");
        await TwiceAsync(page.Locator("fluent-button", new() { HasText = "Take back: import" }));
        await Assertions.Expect(page.GetByText("Taken back: import")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "Zeno Doubleclick" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_block_of_times_is_pasted_into_the_grid_whole_or_not_at_all()
    {
        var page = await workbench.Open(Browser, "/logbook/type");
        await Begin(page, "2035-10-11");
        await PasteInto(Cell(page, 0, 1), "61,5\t62.5\r\n1:03\t64\r\n");
        await Assertions.Expect(Cell(page, 0, 2)).ToHaveValueAsync("62.5");
        await Assertions.Expect(Cell(page, 1, 1)).ToHaveValueAsync("1:03");
        await PasteInto(Cell(page, 0, 3), "65\t66\n");
        await Assertions.Expect(Cell(page, 0, 3)).ToHaveValueAsync("");
        Assert.Contains("Nothing was put in", await Cell(page, 0, 3).EvaluateAsync<string>("cell => cell.validationMessage"), StringComparison.Ordinal);
        await Type(page, 1, 3, "9999");
        await Assertions.Expect(page.Locator(".typing .problem")).ToHaveTextAsync("Set 3: more than three start intervals");
        await Axe.AssertNothing(page);
        await Type(page, 1, 3, "65");
        await Keep(page);
        Assert.Equal([61.5, 62.5], Read(logbook => logbook.Squad.Sessions.First(session => session.Date == new DateOnly(2035, 10, 11) && session.TimesSeconds.Count == 2).TimesSeconds.ToArray()));

        static Task PasteInto(ILocator cell, string text) =>
            cell.EvaluateAsync("(cell, text) => { const data = new DataTransfer(); data.setData('text/plain', text); cell.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })); }", text);
    }

    private static Task TwiceAsync(ILocator button) => button.EvaluateAsync("button => { button.click(); button.click(); }");

    private string LogbookFolder => Path.Combine(workbench.Folder, "logbook");

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static ILocator Cell(IPage page, int row, int set) => page.Locator(string.Create(CultureInfo.InvariantCulture, $"input[data-grid-row='{row}'][data-grid-column='{set}']"));

    private static async Task Begin(IPage page, string date)
    {
        await page.GetByLabel("Date").FillAsync(date);
        await page.GetByLabel("Date").BlurAsync();
        await page.GetByLabel("Protocol").SelectOptionAsync(["tall-three"]);
        await Assertions.Expect(Cell(page, 0, 3)).ToBeVisibleAsync();
        await Assertions.Expect(Cell(page, 0, 4)).ToHaveCountAsync(0);
    }

    private static async Task Type(IPage page, int row, int set, string text)
    {
        await Cell(page, row, set).FillAsync(text);
        await Cell(page, row, set).PressAsync("Enter");
    }

    private static async Task Keep(IPage page)
    {
        await page.Locator("fluent-button", new() { HasText = "Keep the session" }).ClickAsync();
        await Assertions.Expect(page.Locator("fluent-button", new() { HasText = "Take back: typed" })).ToBeVisibleAsync();
    }

    private static async Task LeaveOut(IPage page, string name, string reason)
    {
        await Button(page, $"Leave out the session of {name}").First.ClickAsync();
        await page.GetByLabel("Reason for leaving the session out").FillAsync(reason);
        await Button(page, "Leave out").ClickAsync();
    }

    private static async Task Paste(IPage page, string text)
    {
        await page.GetByLabel("or paste from a spreadsheet").FillAsync(text);
        await page.GetByLabel("or paste from a spreadsheet").BlurAsync();
        await Button(page, "Read what was pasted").ClickAsync();
    }

    private async Task Go(IPage page, string place)
    {
        await page.GotoAsync(new Uri(workbench.Address, place).AbsoluteUri);
        await page.Locator("h1").First.WaitForAsync();
    }

    private T Read<T>(Func<Logbook, T> read)
    {
        using var logbook = Logbook.Open(LogbookFolder);
        return read(logbook);
    }
}
