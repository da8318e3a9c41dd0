namespace SquadAnalytics.Storage;

/// <summary>A change could not be written, for example because the disk is full. The logbook is as before, unless the message says that it will be finished.</summary>
public sealed class LogbookNotWrittenException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened and in which state the logbook is.</param>
    /// <param name="cause">What the system said.</param>
    public LogbookNotWrittenException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
