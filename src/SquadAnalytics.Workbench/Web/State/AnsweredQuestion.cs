using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>A finished run and where its report is kept.</summary>
/// <param name="Run">The run.</param>
/// <param name="KeptAs">Name of the kept run.</param>
public sealed record AnsweredQuestion(NotebookRun Run, string KeptAs);
