namespace SquadAnalytics.Storage;

/// <summary>The last accepted change, which can be undone.</summary>
/// <param name="Description">The change in words.</param>
/// <param name="At">When it was accepted.</param>
public sealed record LogbookAccept(string Description, DateTimeOffset At);
