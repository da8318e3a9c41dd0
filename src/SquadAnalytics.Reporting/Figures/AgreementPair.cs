namespace SquadAnalytics.Reporting.Figures;

/// <summary>Two tests of one athlete.</summary>
/// <param name="Label">The athlete as labelled in this report.</param>
/// <param name="First">The earlier total.</param>
/// <param name="Second">The later total.</param>
public sealed record AgreementPair(string Label, Seconds First, Seconds Second);
