using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>The record of a kept run, as its <c>run.json</c> holds it.</summary>
internal sealed record RunRecord(
    int Version,
    string Notebook,
    string Title,
    DateTimeOffset Started,
    double Seconds,
    bool Succeeded,
    string? Problem,
    string? DataFingerprint,
    string? DataNote,
    string? Logbook,
    IReadOnlyList<string> Versions,
    IReadOnlyList<RecordedParameter> Parameters,
    IReadOnlyList<FindingForm> Findings,
    IReadOnlyList<RecordedCell> Cells,
    IReadOnlyList<string> Figures,
    IReadOnlyList<string> Tables)
{
    // Letters stay as they are: the file is read by people too.
    private static readonly RunJson Json = new(new JsonSerializerOptions(RunJson.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    public static RunRecord Of(NotebookRun run, IReadOnlyList<string> figures, IReadOnlyList<string> tables) => new(
        1,
        run.Name,
        run.Notebook.Title ?? run.Name,
        run.Started,
        Rounded(run.Duration),
        run.Succeeded,
        run.Problem,
        run.DataFingerprint,
        run.DataNote,
        run.LogbookFolder,
        run.Identity is { } identity ? [identity.Library, identity.Engine, identity.Runtime] : [],
        [.. run.Parameters.Select(static parameter => new RecordedParameter(parameter.Name, parameter.Value))],
        [.. run.Findings.Select(FindingForm.Of)],
        [.. run.Cells.Select(static cell => new RecordedCell(cell.Number, cell.Cell.Id, cell.Cell.Name(), cell.Result.Ending.ToString(), Rounded(cell.Result.Duration), cell.Result.Fault?.ToString()) { Fault = cell.Result.Fault })],
        figures,
        tables);

    public string ToJson() => JsonSerializer.Serialize(this, Json.RunRecord) + "\n";

    /// <summary>Reads a record back.</summary>
    /// <exception cref="JsonException">The text is no record; the message says what is wrong.</exception>
    public static RunRecord FromJson(string json)
    {
        var record = JsonSerializer.Deserialize(json, Json.RunRecord) ?? throw new JsonException("It holds nothing.");
        return record.Faults().FirstOrDefault() is { } fault ? throw new JsonException(fault) : record;
    }

    /// <summary>What the form of the file leaves open: lists with holes, times that no clock shows, words that are none of ours.</summary>
    private IEnumerable<string> Faults()
    {
        if (Cells.Contains(null!) || Findings.Contains(null!) || Parameters.Contains(null!)) yield return "One of its lists has an empty place.";
        if (!IsTime(Seconds)) yield return $"'seconds' is no time: {Seconds.ToString(CultureInfo.InvariantCulture)}.";
        foreach (var cell in Cells.OfType<RecordedCell>())
        {
            var name = $"Cell {cell.Number.ToString(CultureInfo.InvariantCulture)}";
            if (!Enum.TryParse<CellEnding>(cell.Ending, out var ending) || !Enum.IsDefined(ending)) yield return $"{name}: '{cell.Ending}' is no ending of a cell.";
            if (!IsTime(cell.Seconds)) yield return $"{name}: 'seconds' is no time: {cell.Seconds.ToString(CultureInfo.InvariantCulture)}.";
        }

        if (Findings.OfType<FindingForm>().Any(static finding => string.IsNullOrWhiteSpace(finding.Sentence))) yield return "A finding has no sentence.";
    }

    private static bool IsTime(double seconds) => seconds >= 0 && seconds < TimeSpan.MaxValue.TotalSeconds;

    private static double Rounded(TimeSpan time) => Math.Round(time.TotalSeconds, 3);
}

/// <summary>A parameter and the value that was used.</summary>
internal sealed record RecordedParameter(string Name, string? Value);

/// <summary>A code cell and how it ended.</summary>
internal sealed record RecordedCell(int Number, string Id, string Name, string Ending, double Seconds, string? Problem)
{
    /// <summary>The problem with its place in the cell.</summary>
    public CellFault? Fault { get; init; }
}

/// <summary>How the record is written as JSON.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(RunRecord))]
internal sealed partial class RunJson : JsonSerializerContext;
