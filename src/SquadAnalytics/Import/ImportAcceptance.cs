using System.Globalization;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Import;

/// <summary>Turns what an import found into one change of a logbook.</summary>
public static class ImportAcceptance
{
    /// <summary>The change that keeps an import: its sessions, athletes, spellings and protocols, the rows that still wait, and copies of the files.</summary>
    /// <remarks>Rows held from an earlier reading of the same files give way to what this reading says of them.</remarks>
    /// <param name="result">What the import found.</param>
    /// <param name="sources">The files it was read from.</param>
    /// <param name="heldBefore">The rows that the logbook holds.</param>
    public static LogbookChange ChangeOf(ImportResult result, IReadOnlyList<ImportSource> sources, IReadOnlyList<HeldRow> heldBefore)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(heldBefore);
        var copies = Copies(sources);
        var questions = result.Decisions.ToDictionary(decision => decision.Id, StringComparer.Ordinal);
        List<HeldRow> held =
        [
            .. result.Report.Refused.Select(row => Held(row, copies)),
            .. result.Report.Held.Select(row => Held(row, questions, copies)),
        ];
        var files = sources.Select(source => PlainName(source.Name)).ToHashSet(StringComparer.Ordinal);
        var ids = held.Select(row => row.Id).ToHashSet(StringComparer.Ordinal);
        return new LogbookChange($"import of {string.Join(", ", sources.Select(source => PlainName(source.Name)))}")
        {
            Athletes = [.. result.NewAthletes, .. result.ChangedAthletes],
            Protocols = result.NewProtocols,
            Sessions = result.Sessions,
            HeldRows = held,
            RemovedHeldRowIds = [.. heldBefore.Where(row => files.Contains(row.File) && !ids.Contains(row.Id)).Select(row => row.Id)],
            ImportCopies = [.. copies.Select(copy => copy.Value)],
        };
    }

    private static HeldRow Held(RefusedRow row, Dictionary<string, ImportCopy> copies) => Held(row.Place, HeldRowState.Refused, row.Cells, copies) with { Problems = [.. row.Problems.Select(problem => problem with { File = PlainName(problem.File) })] };

    private static HeldRow Held(AwaitingRow row, Dictionary<string, ImportDecision> questions, Dictionary<string, ImportCopy> copies) =>
        Held(row.Place, HeldRowState.AwaitingDecision, row.Cells, copies) with
        {
            Problems = [.. row.DecisionIds.Select(id => questions[id]).Select(question => new CellProblem(PlainName(row.Place.File), row.Place.Line, question.Text, question.Choices.Count == 0 ? "an answer" : string.Join(" or ", question.Choices)) { Sheet = row.Place.Sheet })],
            DecisionIds = row.DecisionIds,
        };

    private static HeldRow Held(RowPlace place, HeldRowState state, IReadOnlyList<RowCell> cells, Dictionary<string, ImportCopy> copies)
    {
        var file = PlainName(place.File);
        var id = string.Create(CultureInfo.InvariantCulture, $"{file}{(place.Sheet is null ? "" : $":{place.Sheet}")}:{place.Line}");
        return new HeldRow(id, state, file, place.Sheet, place.Line, [.. cells.Select(cell => new HeldCell(cell.ColumnNumber, cell.Column, cell.Text))]) { ImportCopy = copies.GetValueOrDefault(place.File)?.Name };
    }

    // A file that could not be opened has no copy; it stays as a refused row.
    private static Dictionary<string, ImportCopy> Copies(IReadOnlyList<ImportSource> sources)
    {
        var copies = new Dictionary<string, ImportCopy>(StringComparer.Ordinal);
        foreach (var source in sources)
        {
            try
            {
                copies[source.Name] = new ImportCopy(PlainName(source.Name), source.Read());
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
            {
                continue;
            }
        }

        return copies;
    }

    private static string PlainName(string name)
    {
        var plain = Path.GetFileName(name.Replace('\\', '/').TrimEnd('/')).Replace(':', '-').TrimStart('.');
        return plain.Length == 0 ? "file" : plain;
    }
}
