using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>A notebook as it was changed in a window and not saved.</summary>
/// <param name="Notebook">The notebook.</param>
/// <param name="BasedOn">Fingerprint of the saved file that the changes began with, or null.</param>
/// <param name="IsTrusted">Whether its code may run.</param>
public sealed record UnsavedNotebook(Notebook Notebook, string? BasedOn, bool IsTrusted);
