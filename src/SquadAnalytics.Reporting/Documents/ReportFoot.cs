using System.Globalization;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>What is needed to make the report again.</summary>
public sealed record ReportFoot
{
    /// <summary>The settings, seed included.</summary>
    public IReadOnlyList<ReportParameter> Parameters { get; init; } = [];

    /// <summary>SHA-256 of the data, in hexadecimal; null where the report rests on no data.</summary>
    public string? DataFingerprint { get; init; }

    /// <summary>Program and library versions: <c>SquadAnalytics 0.1.0</c>.</summary>
    public IReadOnlyList<string> Versions { get; init; } = [$"SquadAnalytics {typeof(Squad).Assembly.GetName().Version!.ToString(3)}", $".NET {Environment.Version.ToString(3)}"];

    /// <summary>When the report was made, or null to leave it out.</summary>
    public DateTimeOffset? MadeAt { get; init; }

    /// <summary>How long it took, or null to leave it out.</summary>
    public TimeSpan? Took { get; init; }

    /// <summary>The references that the methods come from.</summary>
    public IReadOnlyList<string> References { get; init; } = [];

    /// <summary>The cautions; all of them unless stated.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = Reporting.Cautions.All;

    /// <summary>When it was made, as printed.</summary>
    internal string? MadeAtText => MadeAt?.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);
}
