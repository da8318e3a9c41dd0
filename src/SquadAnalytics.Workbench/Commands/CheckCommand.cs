using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Reads clipboard files and says what would be kept, refused or asked. Stores nothing.</summary>
internal sealed class CheckCommand : Command
{
    public override string Name => "check";

    public override string Summary => "Reads clipboard files (text or .xlsx) and says what would be kept, refused or asked; stores nothing.";

    public override IReadOnlyList<string> Usage { get; } =
    [
        "check FILE... [--format text|json] [--logbook FOLDER] [options]",
        "--format text|json         for people, or for other programs (default: text)",
        "--logbook FOLDER           match names, protocols and known tests of this logbook",
        .. ImportArguments.Usage,
    ];

    public override async Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress)
    {
        var json = arguments.Choice("--format", false, new("text", false), new("json", true));
        var folder = arguments.Option("--logbook");
        var options = ImportArguments.Options(arguments, null);
        arguments.RequireNoOthers();
        var files = ImportArguments.Files(arguments);
        if (folder is not null)
        {
            if (LogbookFolder.Open(folder, progress) is not { } logbook) return Problems;
            using (logbook) options = options with { Squad = logbook.Squad };
        }

        var result = ImportArguments.Read(files, options);
        await output.WriteLineAsync(json ? ImportJson.Of(result) : ImportText.Of(result)).ConfigureAwait(false);
        return result.Report.IsClean ? Done : Problems;
    }
}
