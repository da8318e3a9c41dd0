using System.Text.Json;
using System.Text.Json.Serialization;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Reporting;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>A finding on its way from the notebook's process to the report: its sentence, what it rests on, and its notes.</summary>
/// <param name="Sentence">The sentence.</param>
/// <param name="Basis">Method, number of observations and source, in one line; may be empty.</param>
/// <param name="Notes">What limits it.</param>
internal sealed record FindingForm(string Sentence, string Basis, IReadOnlyList<string> Notes)
{
    /// <summary>Over how many athletes it is an aggregate, or null.</summary>
    public int? OverAthletes { get; init; }

    /// <summary>The form of a finding.</summary>
    public static FindingForm Of(Finding finding) => new(finding.Sentence, finding.Basis(), finding.Notes) { OverAthletes = finding.OverAthletes };

    /// <summary>The finding of the form.</summary>
    public Finding ToFinding() => new(Sentence) { Method = Basis, Notes = Notes ?? [], OverAthletes = OverAthletes };

    /// <summary>The findings as JSON.</summary>
    public static string Write(IEnumerable<Finding> findings) =>
        JsonSerializer.Serialize([.. findings.Select(Of)], FindingJson.Default.FindingFormArray);

    /// <summary>The findings that cells displayed, in order.</summary>
    public static IReadOnlyList<Finding> ReadAll(IEnumerable<CellRun> cells) =>
    [
        .. cells.SelectMany(static cell => cell.Result.Outputs).OfType<ShownValue>().Select(static value => value.Form(MimeTypes.Finding)).OfType<string>().SelectMany(Read),
    ];

    /// <summary>The findings that one output holds.</summary>
    public static IEnumerable<Finding> Read(string json)
    {
        try
        {
            var forms = JsonSerializer.Deserialize(json, FindingJson.Default.FindingFormArray) ?? [];
            return forms.Where(static form => !string.IsNullOrWhiteSpace(form.Sentence)).Select(static form => form.ToFinding());
        }
        catch (JsonException)
        {
            // A cell may claim the type for any text: then it is no finding, and shows as what it is.
            return [];
        }
    }
}

/// <summary>How findings are written as JSON.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FindingForm[]))]
internal sealed partial class FindingJson : JsonSerializerContext;
