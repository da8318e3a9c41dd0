namespace SquadAnalytics.Storage;

/// <summary>Files of the logbook were changed by another program since they were read. Nothing was written: reload the logbook and repeat the change.</summary>
public sealed class LogbookChangedOutsideException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="files">The files that are not as they were read.</param>
    public LogbookChangedOutsideException(IReadOnlyList<string> files)
        : base($"Changed outside since the logbook was read: {string.Join(", ", files)}. Nothing was written. Reload the logbook, then repeat the change.") => Files = [.. files];

    /// <summary>The files that are not as they were read.</summary>
    public IReadOnlyList<string> Files { get; }
}
