namespace SquadAnalytics.Reporting.Documents;

/// <summary>A setting that a report was made with.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">Its value as text.</param>
public sealed record ReportParameter(string Name, string Value);
