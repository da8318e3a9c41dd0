namespace SquadAnalytics.Storage;

/// <summary>A protocol version that sessions have used was to be changed or removed. Make a new version instead.</summary>
public sealed class ProtocolInUseException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="protocolId">Id of the protocol version.</param>
    public ProtocolInUseException(string protocolId)
        : base($"Protocol '{protocolId}' was used by sessions and never changes; only bands with a later valid-from date may be added. Save the change as a new version.") => ProtocolId = protocolId;

    /// <summary>Id of the protocol version.</summary>
    public string ProtocolId { get; }
}
