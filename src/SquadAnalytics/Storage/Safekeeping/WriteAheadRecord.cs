using System.Text.Json;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>What a transaction will do, written before it does it: enough to finish it after it was cut short.</summary>
/// <param name="Description">The change in words.</param>
/// <param name="At">When it was accepted.</param>
/// <param name="Files">Every file it changes.</param>
/// <param name="Previous">What becomes of the kept state.</param>
/// <param name="Erased">Files and folders it deletes without keeping them, as paths within the logbook folder.</param>
internal sealed record WriteAheadRecord(string Description, DateTimeOffset At, IReadOnlyList<FileChange> Files, PreviousState Previous, IReadOnlyList<string> Erased)
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true };

    public byte[] ToBytes() => JsonSerializer.SerializeToUtf8Bytes(this, Options);

    public static WriteAheadRecord FromFile(string path) =>
        JsonSerializer.Deserialize<WriteAheadRecord>(File.ReadAllBytes(path), Options) ?? throw new JsonException($"{path} is empty.");
}
