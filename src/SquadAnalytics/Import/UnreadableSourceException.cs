namespace SquadAnalytics.Import;

/// <summary>A file that cannot be read at all: it becomes one refused row of the report.</summary>
internal sealed class UnreadableSourceException(string reason, string accepts, Exception? inner = null) : Exception(reason, inner)
{
    public string Accepts { get; } = accepts;
}
