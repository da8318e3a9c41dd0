namespace SquadAnalytics.SampleSquad;

/// <summary>One messy clipboard file of the invented club.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="About">What is messy about it, in one line.</param>
/// <param name="Content">Its bytes.</param>
public sealed record ClipboardFile(string Name, string About, byte[] Content);
