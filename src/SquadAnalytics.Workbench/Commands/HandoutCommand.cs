using System.Text;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary><c>handout</c>: one page in plain words for one boxer, or a parent.</summary>
internal sealed class HandoutCommand : Command
{
    public override string Name => "handout";

    public override string Summary => "Writes one page in plain words for one boxer or a parent, with nobody else's times on it.";

    public override IReadOnlyList<string> Usage { get; } =
    [
        "handout CODE [--logbook FOLDER] [--protocol P] [--out FOLDER] [--unlisted]",
        "CODE                       the boxer's code, name or id",
        "--logbook FOLDER           the squad's logbook (default: the invented sample squad)",
        "--protocol P               id or name of the protocol (default: that of the boxer's latest complete test)",
        "--out FOLDER               a new or empty folder (default: a new one in exports/ here or, where that cannot be written, in your data folder)",
        ListedExport.Usage,
        "A junior is shown by code. Health entries are on no handout.",
    ];

    public override IReadOnlyList<string> Switches => [ListedExport.Unlisted];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var (named, protocol, folder) = (arguments.Option("--logbook"), arguments.Option("--protocol"), arguments.Option("--out"));
        arguments.RequireNoOthers();
        if (arguments.Plain.Count != 1) throw new UsageException(arguments.Plain.Count == 0 ? "Name the boxer: handout CODE." : $"A handout is for one boxer; '{arguments.Plain[1]}' is one too many.");
        if (folder is not null) folder = ExportFolder.Named(folder);
        using var logbook = LogbookFolder.Open(named ?? Shipped.SampleSquad, progress);
        if (logbook is null) return Problems;
        try
        {
            return await WriteAsync(arguments, logbook, protocol, named is null, folder, output, progress).ConfigureAwait(false);
        }
        catch (ArgumentException error)
        {
            throw new UsageException(Sentences.Mistake(error));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or LogbookNotWrittenException or LogbookChangedOutsideException)
        {
            await progress.WriteLineAsync($"Nothing was written: {error.Message}").ConfigureAwait(false);
            return Problems;
        }
    }

    private static async Task<int> WriteAsync(Arguments arguments, Logbook logbook, string? protocol, bool isInvented, string? folder, TextWriter output, TextWriter progress)
    {
        var squad = logbook.Squad;
        var athlete = squad.Athlete(arguments.Plain[0]);
        var options = new HandoutOptions { Protocol = protocol is null ? null : squad.Protocol(protocol), DataNote = isInvented ? "Invented data: this boxer does not exist." : null };
        var listed = new ListedExport(logbook, isInvented, arguments.Has(ListedExport.Unlisted));
        if (listed.Obstacle is { } obstacle)
        {
            await progress.WriteLineAsync(obstacle).ConfigureAwait(false);
            return Problems;
        }

        var answer = Handout.Of(squad, athlete.Id, options);
        if (!answer.TryGet(out var handout))
        {
            await progress.WriteLineAsync(Sentences.Refusal(answer.Refusal!)).ConfigureAwait(false);
            return Problems;
        }

        var name = $"handout-{PlainName.Of(athlete.Code)}";
        folder ??= ExportFolder.New(Environment.CurrentDirectory, Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), name);
        listed.Write("handout", [new ExportedFile(name + ".html", Encoding.UTF8.GetBytes(handout.ToHtml()))], folder, [athlete.Id]);
        await output.WriteLineAsync($"Handout: {Path.Combine(folder, name + ".html")}").ConfigureAwait(false);
        return Done;
    }
}
