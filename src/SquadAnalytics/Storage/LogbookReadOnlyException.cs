namespace SquadAnalytics.Storage;

/// <summary>The logbook was opened for reading only, so nothing can be written to it.</summary>
public sealed class LogbookReadOnlyException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="reason">Why it is read-only.</param>
    public LogbookReadOnlyException(string reason)
        : base($"This logbook is open for reading only: {reason}.")
    {
    }
}
