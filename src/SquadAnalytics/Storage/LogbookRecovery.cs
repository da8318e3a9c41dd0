namespace SquadAnalytics.Storage;

/// <summary>What opening a logbook did with a change that had been cut short, by a power cut or a killed program.</summary>
/// <param name="Kind">Whether it was finished or taken back.</param>
/// <param name="Description">The change in words.</param>
/// <param name="SetAside">Copies of files that somebody had changed meanwhile and that the finished change replaced; paths within the logbook folder.</param>
public sealed record LogbookRecovery(RecoveryKind Kind, string Description, IReadOnlyList<string> SetAside);
