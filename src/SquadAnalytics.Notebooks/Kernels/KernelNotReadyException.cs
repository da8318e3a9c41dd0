using System.Globalization;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Thrown when a notebook's process lives but does not become ready in its time.</summary>
/// <param name="allowed">How long it was waited for.</param>
internal sealed class KernelNotReadyException(TimeSpan allowed) : KernelException(
    string.Create(CultureInfo.InvariantCulture, $"The notebook's process did not become ready within {allowed.TotalSeconds:0.##} s, so it was ended."));
