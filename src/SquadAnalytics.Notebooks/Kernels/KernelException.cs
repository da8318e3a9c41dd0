namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Thrown when a notebook's process does not become ready, or cannot open the folders that it was given.</summary>
public class KernelException : IOException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened, in words.</param>
    public KernelException(string message)
        : base(message)
    {
    }
}
