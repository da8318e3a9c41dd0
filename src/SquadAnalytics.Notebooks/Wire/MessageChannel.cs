using System.Buffers.Binary;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SquadAnalytics.Notebooks.Wire;

/// <summary>
/// Messages over a pair of pipes. Each message is a header of eight bytes (two fixed bytes, the version of the language spoken,
/// the length) and that many bytes of JSON; a header that is not understood or announces too much ends the conversation.
/// </summary>
internal sealed class MessageChannel(Stream input, Stream output) : IDisposable
{
    public const int MaximumBytes = 64 << 20;
    private const int HeaderBytes = 8;
    private const ushort Mark = 0x5153;
    private const ushort Version = 1;

    // Most of what is said is HTML, SVG and pictures: letters stay as they are, an escaped sign would take six bytes.
    private static readonly WireJson Json = new(new JsonSerializerOptions(WireJson.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    private readonly Lock _writing = new();

    /// <summary>Writes one message; blocks while the other side does not read.</summary>
    public void Write(WireMessage message)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(message, Json.WireMessage);
        if (body.Length > MaximumBytes) throw new WireException($"A message of {body.Length} bytes is longer than the {MaximumBytes} allowed.");
        Span<byte> header = stackalloc byte[HeaderBytes];
        BinaryPrimitives.WriteUInt16LittleEndian(header, Mark);
        BinaryPrimitives.WriteUInt16LittleEndian(header[2..], Version);
        BinaryPrimitives.WriteInt32LittleEndian(header[4..], body.Length);
        lock (_writing)
        {
            output.Write(header);
            output.Write(body);
            output.Flush();
        }
    }

    /// <summary>Reads one message; null when the other side has closed the pipe.</summary>
    /// <exception cref="WireException">What arrived is not a message.</exception>
    public WireMessage? Read()
    {
        Span<byte> header = stackalloc byte[HeaderBytes];
        var read = input.ReadAtLeast(header, HeaderBytes, throwOnEndOfStream: false);
        if (read == 0) return null;
        if (read < HeaderBytes) throw new WireException("The conversation broke off within a message.");
        var length = BinaryPrimitives.ReadInt32LittleEndian(header[4..]);
        if (BinaryPrimitives.ReadUInt16LittleEndian(header) != Mark) throw new WireException("What arrived is not a message.");
        if (BinaryPrimitives.ReadUInt16LittleEndian(header[2..]) != Version) throw new WireException("The two sides speak different versions.");
        if (length is < 2 or > MaximumBytes) throw new WireException($"A message of {length} bytes is not allowed.");
        var body = new byte[length];
        if (input.ReadAtLeast(body, length, throwOnEndOfStream: false) < length) throw new WireException("The conversation broke off within a message.");
        try
        {
            return JsonSerializer.Deserialize(body, Json.WireMessage) ?? throw new WireException("An empty message arrived.");
        }
        catch (Exception error) when (error is JsonException or NotSupportedException)
        {
            throw new WireException("A message could not be read: " + error.Message, error);
        }
    }

    /// <summary>Says that no more messages will come.</summary>
    public void CloseOutput() => output.Dispose();

    public void Dispose()
    {
        input.Dispose();
        output.Dispose();
    }
}
