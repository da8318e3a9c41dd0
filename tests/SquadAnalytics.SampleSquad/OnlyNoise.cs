namespace SquadAnalytics.SampleSquad;

/// <summary>Nothing changes all season: no trend, no answer to either block. Whatever the times seem to say is noise.</summary>
public sealed record OnlyNoise : Story;
