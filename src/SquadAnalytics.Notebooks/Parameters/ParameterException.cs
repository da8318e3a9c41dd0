namespace SquadAnalytics.Notebooks.Parameters;

/// <summary>Thrown when a parameters cell cannot be read, or a value does not fit its parameter.</summary>
public sealed class ParameterException : FormatException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What is wrong and what would be right, in words.</param>
    public ParameterException(string message)
        : base(message)
    {
    }
}
