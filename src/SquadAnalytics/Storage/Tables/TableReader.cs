using System.Globalization;
using System.Text.Unicode;
using CsvHelper;

namespace SquadAnalytics.Storage.Tables;

/// <summary>Reads one table; everything that cannot be read becomes a <see cref="CellProblem"/> with its line and column.</summary>
internal sealed class TableReader
{
    private const int MostProblems = 100;
    private static readonly CsvReaderOptions Options = new()
    {
        Separator = ',',
        TrackLineNumbers = true,
        MalformedData = CsvMalformedDataHandling.Throw,
        FieldCountMismatch = CsvFieldCountHandling.Throw,
        PoolStrings = true, // Ids and words stand in many rows.
        FormatProvider = CultureInfo.InvariantCulture,
    };

    private readonly Table _table;
    private readonly List<CellProblem> _problems;
    private readonly int[] _fields;
    private CsvReader _csv = null!;

    private TableReader(Table table, List<CellProblem> problems)
    {
        _table = table;
        _problems = problems;
        _fields = new int[table.Columns.Count];
    }

    /// <summary>Line of the current row in the file, from 1.</summary>
    public long Line => _csv.LineNumber;

    /// <summary>Builds one value for each row that can be read; the others are added to the problems.</summary>
    public static List<T> ReadAll<T>(Table table, ReadOnlyMemory<byte> content, List<CellProblem> problems, Func<TableReader, T> build)
    {
        var reader = new TableReader(table, problems);
        return reader.ReadAll(content, build);
    }

    public string Text(Column column)
    {
        var text = SafeText.Restore(_csv.GetString(Field(column)));
        if (column.IsRequired && string.IsNullOrWhiteSpace(text)) throw Bad(column, "is empty");
        return text;
    }

    public string? TextOrNull(Column column)
    {
        var text = Text(column);
        return text.Length == 0 ? null : text;
    }

    public DateOnly Date(Column column) => DateOrNull(column) ?? throw Bad(column, "is empty");

    public DateOnly? DateOrNull(Column column)
    {
        if (IsEmpty(column)) return null;
        return DateOnly.TryParseExact(_csv.GetString(Field(column)), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw Bad(column, "is not a date");
    }

    public DateTimeOffset Moment(Column column) =>
        DateTimeOffset.TryParse(_csv.GetString(Field(column)), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var moment)
            ? moment
            : throw Bad(column, "is not a time");

    public double? NumberOrNull(Column column)
    {
        if (IsEmpty(column)) return null;

        // No thousands separator: a decimal comma must never turn 62,4 into 624.
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (!double.TryParse(_csv.GetSpan(Field(column)), style, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
            throw Bad(column, "is not a number");
        return number < column.Minimum ? throw Bad(column, "is too small") : number;
    }

    public double Number(Column column) => NumberOrNull(column) ?? throw Bad(column, "is empty");

    public int? IntegerOrNull(Column column)
    {
        if (IsEmpty(column)) return null;
        if (!int.TryParse(_csv.GetSpan(Field(column)), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
            throw Bad(column, "is not a whole number");
        return number < column.Minimum ? throw Bad(column, "is too small") : number;
    }

    public int Integer(Column column) => IntegerOrNull(column) ?? throw Bad(column, "is empty");

    public bool Flag(Column column) => _csv.GetString(Field(column)) switch
    {
        // Spreadsheets write TRUE and FALSE.
        "true" or "TRUE" or "True" => true,
        "false" or "FALSE" or "False" or "" => false,
        _ => throw Bad(column, "is neither true nor false"),
    };

    public T Choice<T>(Column column, IReadOnlyDictionary<string, T> words)
        where T : struct, Enum => words.TryGetValue(_csv.GetString(Field(column)), out var value) ? value : throw Bad(column, "is not a word used here");

    /// <summary>The row of another table that this cell refers to.</summary>
    public T Referred<T>(Column column, IReadOnlyDictionary<string, T> rows, Table table)
    {
        var id = Text(column);
        return rows.TryGetValue(id, out var row) ? row : throw Bad(column, $"is not in {table.File}", $"an id that stands in {table.File}");
    }

    /// <summary>Fails when a key was already there.</summary>
    public void Once<TKey, TValue>(Column column, Dictionary<TKey, TValue> seen, TKey key, TValue value)
        where TKey : notnull
    {
        if (!seen.TryAdd(key, value)) throw Bad(column, "stands there twice", "each " + string.Join(" + ", _table.Key.Select(part => part.Name)) + " once");
    }

    public BadCellException Bad(Column column, string reason, string? accepts = null) => new(new CellProblem(_table.File, Line, reason, accepts ?? column.Accepts)
    {
        Column = column.Name,
        ColumnNumber = Field(column) + 1,
        Text = _csv.GetString(Field(column)),
    });

    private bool IsEmpty(Column column)
    {
        var empty = _csv.IsEmpty(Field(column));
        return empty && column.IsRequired ? throw Bad(column, "is empty") : empty;
    }

    private int Field(Column column)
    {
        for (var index = 0; index < _fields.Length; index++)
        {
            if (ReferenceEquals(_table.Columns[index], column)) return _fields[index];
        }

        throw new ArgumentException($"Table {_table.Name} has no column {column.Name}.", nameof(column));
    }

    private List<T> ReadAll<T>(ReadOnlyMemory<byte> content, Func<TableReader, T> build)
    {
        var rows = new List<T>();
        if (!Utf8.IsValid(content.Span))
        {
            _problems.Add(new CellProblem(_table.File, FirstInvalidLine(content.Span), "holds bytes that are not UTF-8 text", "a file saved as CSV UTF-8"));
            return rows;
        }

        using (_csv = CsvReader.Create(content, Options))
        {
            try
            {
                _csv.ReadHeader();
                if (!MatchHeader()) return rows;
                while (_csv.Read() && _problems.Count < MostProblems) Add(rows, build);
            }
            catch (CsvFormatException error)
            {
                _problems.Add(new CellProblem(_table.File, Math.Max(1, error.LineNumber), "cannot be taken apart into columns", $"{_table.Columns.Count} columns separated by commas, texts with commas in double quotes"));
            }
        }

        return rows;
    }

    private void Add<T>(List<T> rows, Func<TableReader, T> build)
    {
        try
        {
            rows.Add(build(this));
        }
        catch (BadCellException bad)
        {
            _problems.Add(bad.Problem);
        }
        catch (ArgumentException rule)
        {
            _problems.Add(new CellProblem(_table.File, Line, $"breaks a rule: {rule.Message}", "see the reason"));
        }
    }

    /// <summary>Columns may stand in any order; all must be there, and none that would be lost when the table is written.</summary>
    private bool MatchHeader()
    {
        var expected = string.Join(',', _table.Columns.Select(column => column.Name));
        var headers = _csv.Headers.ToArray();
        for (var index = 0; index < _fields.Length; index++)
        {
            _fields[index] = Array.IndexOf(headers, _table.Columns[index].Name);
            if (_fields[index] < 0) return Refuse($"has no column '{_table.Columns[index].Name}'");
        }

        var foreign = headers.FirstOrDefault(header => _table.Columns.All(column => column.Name != header));
        if (foreign is not null) return Refuse($"has a column '{foreign}' that is not known here and would be lost");
        return headers.Length == _fields.Length || Refuse("has a column twice");

        bool Refuse(string reason)
        {
            _problems.Add(new CellProblem(_table.File, 1, reason, $"the header {expected}") { Text = string.Join(',', headers) });
            return false;
        }
    }

    private static long FirstInvalidLine(ReadOnlySpan<byte> content)
    {
        long line = 1;
        while (!content.IsEmpty)
        {
            var end = content.IndexOf((byte)'\n');
            var current = end < 0 ? content : content[..end];
            if (!Utf8.IsValid(current)) return line;
            line++;
            content = end < 0 ? [] : content[(end + 1)..];
        }

        return line;
    }
}
