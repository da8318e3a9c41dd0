using System.Globalization;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Thrown when a notebook's process does not become ready, or cannot open the folders that it was given.</summary>
public sealed class KernelException : IOException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What happened, in words.</param>
    public KernelException(string message)
        : base(message)
    {
    }

    /// <summary>Whether the process lived and was only too slow.</summary>
    internal bool WasTooSlow { get; private init; }

    /// <summary>The exception for a process that was not ready in its time.</summary>
    internal static KernelException TooSlow(TimeSpan allowed) =>
        new(string.Create(CultureInfo.InvariantCulture, $"The notebook's process did not become ready within {allowed.TotalSeconds:0.##} s, so it was ended.")) { WasTooSlow = true };
}
