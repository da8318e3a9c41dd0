namespace SquadAnalytics.Workbench.Commands;

/// <summary>The command line was used wrongly; the message says how it is meant.</summary>
internal sealed class UsageException(string message) : Exception(message);
