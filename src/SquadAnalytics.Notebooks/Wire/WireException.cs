namespace SquadAnalytics.Notebooks.Wire;

/// <summary>The other side of a pipe did not keep to the language that both speak.</summary>
internal sealed class WireException(string message, Exception? inner = null) : IOException(message, inner);
