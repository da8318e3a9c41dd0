using SquadAnalytics.Import;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>A refused row with the cells as a person corrected them.</summary>
/// <param name="Row">The row as it was refused.</param>
/// <param name="Texts">Its cells in their order, corrected.</param>
public sealed record MendedRow(RefusedRow Row, IReadOnlyList<string> Texts);
