namespace SquadAnalytics.Notebooks.Files;

/// <summary>Thrown when a file is not a notebook that can be read.</summary>
public sealed class NotebookFormatException : FormatException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What is wrong with the file, in words.</param>
    /// <param name="inner">The error behind it, or null.</param>
    public NotebookFormatException(string message, Exception? inner = null)
        : base(message, inner)
    {
    }
}
