using System.Globalization;
using System.Text;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Workbench.Commands;

/// <summary><c>sheet</c>: a recording sheet to print, and the empty table that belongs to it.</summary>
internal sealed class SheetCommand : Command
{
    private const string Codes = "--codes";
    private const string Stations = "--stations";
    private const string Landscape = "--landscape";

    public override string Name => "sheet";

    public override string Summary => "Writes a recording sheet to print, and the empty table that belongs to it.";

    public override IReadOnlyList<string> Usage { get; } =
    [
        "sheet [--logbook FOLDER] [--protocol P] [--date YYYY-MM-DD] [options]",
        "--logbook FOLDER           the squad's logbook (default: the invented sample squad)",
        "--protocol P               id or name of the protocol (default: the squad's only one)",
        "--date YYYY-MM-DD          the test date (default: today)",
        "--group NAME               only members of this group",
        "--heat-size N              the most athletes that start together (default: " + RecordingSheetOptions.DefaultHeatSize.ToString(CultureInfo.InvariantCulture) + ")",
        "--codes                    everybody by code (default: juniors by code, others by name)",
        "--stations                 a box for each station of each set",
        "--landscape                the page on its side, however few columns there are",
        "--out FOLDER               a new or empty folder (default: a new one in exports/ here or, where that cannot be written, in your data folder)",
        "Who has a head knock without a clearance date is not listed; the sheet names nobody for it.",
    ];

    public override IReadOnlyList<string> Switches => [Codes, Stations, Landscape];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var (folder, protocol) = (arguments.Option("--logbook") ?? Shipped.SampleSquad, arguments.Option("--protocol"));
        var (date, named) = (Date(arguments.Option("--date")), arguments.Option("--out"));
        var options = new RecordingSheetOptions
        {
            Group = arguments.Option("--group"),
            HeatSize = HeatSize(arguments.Option("--heat-size")),
            OnlyCodes = arguments.Has(Codes),
            Stations = arguments.Has(Stations),
            Landscape = arguments.Has(Landscape) ? true : null,
        };
        arguments.RequireNoOthers();
        if (arguments.Plain.Count > 0) throw new UsageException($"'{arguments.Plain[0]}' is no option of sheet.");
        var target = named is null ? null : ExportFolder.Named(named);
        using var logbook = LogbookFolder.Open(folder, progress);
        if (logbook is null) return Problems;
        try
        {
            var sheet = RecordingSheet.Of(logbook.Squad, Protocol(logbook.Squad, protocol), date, options);
            return await WriteAsync(sheet, target, output, progress).ConfigureAwait(false);
        }
        catch (ArgumentException error)
        {
            throw new UsageException(Sentences.Mistake(error));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            await progress.WriteLineAsync($"Nothing was written: {error.Message}").ConfigureAwait(false);
            return Problems;
        }
    }

    private static async Task<int> WriteAsync(RecordingSheet sheet, string? folder, TextWriter output, TextWriter progress)
    {
        foreach (var athlete in sheet.NotCleared) await progress.WriteLineAsync($"Not listed: {athlete.DisplayName} ({athlete.Code}), whose head knock has no clearance date. Enter the date once a licensed clinician has cleared them.").ConfigureAwait(false);
        if (sheet.Heats.All(static heat => heat.Labels.Count == 0)) await progress.WriteLineAsync("Nobody is due for this protocol on that date: the sheet has empty lines only.").ConfigureAwait(false);
        var name = string.Create(CultureInfo.InvariantCulture, $"sheet-{PlainName.Of(sheet.Protocol.Id)}-{sheet.Date:yyyyMMdd}");
        folder ??= ExportFolder.New(Environment.CurrentDirectory, Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), name);
        ExportedFile[] files = [new(name + ".html", Encoding.UTF8.GetBytes(sheet.ToHtml())), new(name + ".csv", sheet.ToCsv()), new(name + ".xlsx", sheet.ToWorkbook())];
        ExportFolder.Write(files, folder, static () => { });
        await output.WriteLineAsync($"Sheet {sheet.Code}: {Path.Combine(folder, name + ".html")}").ConfigureAwait(false);
        await output.WriteLineAsync($"  to fill in: {name}.csv or {name}.xlsx").ConfigureAwait(false);
        return Done;
    }

    private static Protocol Protocol(Squad squad, string? named) => named is not null
        ? squad.Protocol(named)
        : squad.Protocols is [var only]
            ? only
            : throw new UsageException($"Name the protocol with --protocol: {string.Join(", ", squad.Protocols.Select(static protocol => protocol.Id))}.");

    private static DateOnly Date(string? text)
    {
        if (text is null) return DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : throw new UsageException($"--date {text}: write it as 2031-03-04.");
    }

    private static int HeatSize(string? text)
    {
        if (text is null) return RecordingSheetOptions.DefaultHeatSize;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var size) && size is >= 1 and <= 100 ? size : throw new UsageException($"--heat-size is a whole number from 1 to 100, not '{text}'.");
    }
}
