using System.Text;
using System.Text.Json;
using SquadAnalytics.Internals;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Storage;

/// <summary>A session that is being typed: every cell is on disk before the next one is typed, and is found again after a power cut.</summary>
/// <remarks>A file in the logbook's folder of drafts to which one line of JSON is added for each cell; the latest text of a cell counts.</remarks>
public sealed class SessionDraft
{
    private readonly string _path;
    private readonly TimeProvider _time;
    private readonly Func<string?> _readOnlyReason;
    private readonly List<DraftCell> _cells = [];
    private bool _endsWithinLine;

    private SessionDraft(string path, TimeProvider time, Func<string?> readOnlyReason)
    {
        _path = path;
        _time = time;
        _readOnlyReason = readOnlyReason;
    }

    /// <summary>Its id, unique in the logbook.</summary>
    public string Id => Path.GetFileNameWithoutExtension(_path);

    /// <summary>The latest text of each cell, in the order in which the cells were first typed.</summary>
    public IReadOnlyList<DraftCell> Cells => [.. _cells];

    /// <summary>Lines of the file that cannot be read, for example the last one after a power cut; 0 as a rule. They stay in the file.</summary>
    public int UnreadableLines { get; private set; }

    internal static string Extension => ".jsonl";

    /// <summary>The text of a cell, or null where nothing was typed.</summary>
    /// <param name="row">The row.</param>
    /// <param name="column">The column.</param>
    public string? Text(string row, string column) => _cells.Find(cell => cell.Row == row && cell.Column == column)?.Text;

    /// <summary>Types a cell: it is on disk when this returns. An empty text clears it.</summary>
    /// <param name="row">The row: the athlete's id, or any text that the typing grid chooses; empty for what concerns the whole session.</param>
    /// <param name="column">The column, for example <c>set 1</c> or <c>test date</c>.</param>
    /// <param name="text">The cell as typed.</param>
    /// <exception cref="LogbookReadOnlyException">The logbook is open for reading only.</exception>
    /// <exception cref="LogbookNotWrittenException">Writing failed, for example on a full disk.</exception>
    public void Type(string row, string column, string text)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(text);
        if (_readOnlyReason() is { } reason) throw new LogbookReadOnlyException(reason);
        var cell = new DraftCell(_time.GetUtcNow(), row, Require.Text(column), text);
        try
        {
            using var file = new FileStream(_path, Disk.Owned(FileMode.Append, FileShare.Read));

            // A line that was cut short must not swallow this one.
            var line = Encoding.UTF8.GetBytes((_endsWithinLine ? "\n" : "") + JsonSerializer.Serialize(cell) + "\n");
            Disk.Writing(_path, () => file.Write(line));
            file.Flush(flushToDisk: true);
            _endsWithinLine = false;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            _endsWithinLine = true;
            throw new LogbookNotWrittenException($"The cell was not written: {error.Message}", error);
        }

        Take(cell);
    }

    /// <summary>Id and number of cells.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"draft {Id}: {_cells.Count} cells");

    internal static SessionDraft Open(string path, TimeProvider time, Func<string?> readOnlyReason)
    {
        var draft = new SessionDraft(path, time, readOnlyReason);
        if (!File.Exists(path)) return draft;
        var text = File.ReadAllText(path);
        draft._endsWithinLine = text.Length > 0 && text[^1] != '\n';
        foreach (var line in text.Split('\n').Where(line => line.Length > 0))
        {
            if (Read(line) is { } cell) draft.Take(cell);
            else draft.UnreadableLines++;
        }

        return draft;
    }

    /// <summary>The bytes of a file that holds these cells alone.</summary>
    internal static byte[] FileOf(IEnumerable<DraftCell> cells) => Encoding.UTF8.GetBytes(string.Concat(cells.Select(cell => JsonSerializer.Serialize(cell) + "\n")));

    private static DraftCell? Read(string line)
    {
        try
        {
            return JsonSerializer.Deserialize<DraftCell>(line) is { Row: not null, Column: not null, Text: not null } cell ? cell : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private void Take(DraftCell cell)
    {
        var place = _cells.FindIndex(other => other.Row == cell.Row && other.Column == cell.Column);
        if (place >= 0) _cells[place] = cell;
        else _cells.Add(cell);
    }
}
