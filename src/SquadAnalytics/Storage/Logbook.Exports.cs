using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Storage.Safekeeping;
using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Storage;

public sealed partial class Logbook
{
    /// <summary>Remembers that something was written to a place outside the folder, so that removing a person can name it. Undo does not take it back.</summary>
    /// <param name="kind">What it was, for example <c>report</c>.</param>
    /// <param name="destination">Where it went.</param>
    /// <param name="athleteIds">The athletes in it; empty means the whole squad.</param>
    public void RecordExport(string kind, string destination, IReadOnlyList<string> athleteIds)
    {
        RequireWritable();
        ArgumentNullException.ThrowIfNull(athleteIds);
        var number = 1 + Exports.Select(export => int.TryParse(export.Id.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var used) ? used : 0).DefaultIfEmpty().Max();
        var export = new LogbookExport(string.Create(CultureInfo.InvariantCulture, $"x{number}"), _time.GetUtcNow(), Require.Text(kind), Require.Text(destination), [.. athleteIds.Distinct(StringComparer.Ordinal)]);
        var after = _content with { Exports = [.. Exports, export] };
        Accept("an export noted", after, Bytes(LogbookTables.Write(after, _content)), [], PreviousState.Left, []);
    }

    private static Dictionary<string, ReadOnlyMemory<byte>> Bytes(IReadOnlyDictionary<string, byte[]> files) =>
        files.ToDictionary(file => file.Key, file => (ReadOnlyMemory<byte>)file.Value, StringComparer.Ordinal);
}
