namespace SquadAnalytics.Storage;

/// <summary>The last accepted change, which can be undone.</summary>
/// <param name="Description">The change in words.</param>
/// <param name="At">When it was accepted.</param>
public sealed record LogbookAccept(string Description, DateTimeOffset At)
{
    internal const string Undone = "undone: ";

    /// <summary>The change in words that was taken back by undoing it, so that undoing again does it once more; null where this is no undoing.</summary>
    public string? TakenBack => Description.StartsWith(Undone, StringComparison.Ordinal) ? Description[Undone.Length..] : null;
}
