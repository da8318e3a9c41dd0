using System.Globalization;
using SquadAnalytics.Import;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Imports clipboard files into a logbook, in one transaction.</summary>
internal sealed class AddCommand : Command
{
    public override string Name => "add";

    public override string Summary => "Imports clipboard files (text or .xlsx) into a logbook, in one transaction; rows that are refused or wait are held there.";

    public override IReadOnlyList<string> Usage { get; } = ["add FILE... --logbook FOLDER [options]", "--logbook FOLDER           the logbook to add to", .. ImportArguments.Usage];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var folder = arguments.Option("--logbook") ?? throw new UsageException("Name the logbook: --logbook FOLDER.");
        var options = ImportArguments.Options(arguments, null);
        arguments.RequireNoOthers();
        var files = ImportArguments.Files(arguments);
        using var logbook = LogbookFolder.Open(folder, progress);
        if (logbook is null) return Problems;
        if (logbook.IsReadOnly)
        {
            await progress.WriteLineAsync($"Nothing was changed: the logbook cannot be written, because {logbook.ReadOnlyReason}.").ConfigureAwait(false);
            return Problems;
        }

        var result = ImportArguments.Read(files, options with { Squad = logbook.Squad });
        var change = ImportAcceptance.ChangeOf(result, files, logbook.HeldRows);
        try
        {
            logbook.Commit(change);
        }
        catch (Exception error) when (error is LogbookNotWrittenException or LogbookChangedOutsideException or LogbookReadOnlyException or ProtocolInUseException or ArgumentException)
        {
            await progress.WriteLineAsync($"Nothing was changed: {error.Message}").ConfigureAwait(false);
            return Problems;
        }

        await output.WriteLineAsync(Changes(result, logbook)).ConfigureAwait(false);
        await output.WriteLineAsync().ConfigureAwait(false);
        await output.WriteLineAsync(ImportText.Of(result)).ConfigureAwait(false);
        return result.Report.IsClean ? Done : Problems;
    }

    private static string Changes(ImportResult result, Logbook logbook)
    {
        List<string> changes = [];
        if (result.NewSessions.Count > 0) changes.Add(string.Create(CultureInfo.InvariantCulture, $"sessions added: {result.NewSessions.Count}, of {result.NewSessions.Min(session => session.Date):yyyy-MM-dd} to {result.NewSessions.Max(session => session.Date):yyyy-MM-dd}"));
        if (result.ChangedSessions.Count > 0) changes.Add(string.Create(CultureInfo.InvariantCulture, $"sessions completed or replaced: {string.Join(", ", result.ChangedSessions.Select(session => session.Id))}"));
        if (result.NewAthletes.Count > 0) changes.Add($"new athletes: {string.Join(", ", result.NewAthletes.Select(athlete => $"{athlete.DisplayName} ({athlete.Code})"))}");
        if (result.ChangedAthletes.Count > 0) changes.Add($"spellings confirmed for {string.Join(", ", result.ChangedAthletes.Select(athlete => athlete.Code))}");
        if (result.NewProtocols.Count > 0) changes.Add($"new protocols: {string.Join(", ", result.NewProtocols.Select(protocol => protocol.Name))}");
        var waiting = result.Report.RefusedRows + result.Report.DecisionRows;
        if (waiting > 0) changes.Add(string.Create(CultureInfo.InvariantCulture, $"rows held in the logbook until they are mended, decided or dismissed: {waiting}"));
        return changes.Count == 0 ? $"{logbook.Squad.Name}: nothing new." : $"{logbook.Squad.Name}:{string.Concat(changes.Select(change => $"{Environment.NewLine}  {change}"))}";
    }
}
