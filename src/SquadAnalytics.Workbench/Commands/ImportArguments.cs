using System.Globalization;
using System.Text.Json;
using SquadAnalytics.Import;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>The options that say how clipboard files are to be read.</summary>
internal static class ImportArguments
{
    /// <summary>The options as the help shows them.</summary>
    public static IReadOnlyList<string> Usage { get; } =
    [
        "--date-order dmy|mdy|ymd   order of day, month and year where dates are three numbers",
        "--date YYYY-MM-DD          date of rows that state none",
        "--protocol P               id or name of the protocol of rows that state none",
        "--decimal comma|point      decimal mark of times",
        "--times work|clock         whether set times are work times or the running clock",
        "--new-athletes ask|accept  whether names that resemble nobody are new athletes without asking (default: ask)",
        "--answers FILE             JSON object of decision ids and chosen answers: {\"date-order:april.csv\": \"dmy\"}",
    ];

    /// <summary>The files to read.</summary>
    /// <exception cref="UsageException">There is none, or one does not exist.</exception>
    public static IReadOnlyList<ImportSource> Files(Arguments arguments)
    {
        if (arguments.Plain.Count == 0) throw new UsageException("Name one or more files.");
        if (arguments.Plain.FirstOrDefault(path => !File.Exists(path)) is { } missing) throw new UsageException($"There is no file {missing}.");
        return [.. arguments.Plain.Select(ImportSource.FromFile)];
    }

    /// <summary>How to read them.</summary>
    /// <param name="arguments">The arguments.</param>
    /// <param name="squad">The squad to match against, or null.</param>
    /// <exception cref="UsageException">An option has a value that it cannot have.</exception>
    public static ImportOptions Options(Arguments arguments, Squad? squad) => new()
    {
        DateOrder = arguments.Choice<DateOrder?>("--date-order", null, new("dmy", DateOrder.DayMonthYear), new("mdy", DateOrder.MonthDayYear), new("ymd", DateOrder.YearMonthDay)),
        Date = Date(arguments),
        Protocol = arguments.Option("--protocol"),
        DecimalMark = arguments.Choice<DecimalMark?>("--decimal", null, new("comma", DecimalMark.Comma), new("point", DecimalMark.Point)),
        Times = arguments.Choice<TimeMeaning?>("--times", null, new("work", TimeMeaning.Work), new("clock", TimeMeaning.Clock)),
        AcceptNewAthletes = arguments.Choice("--new-athletes", false, new("ask", false), new("accept", true)),
        Answers = Answers(arguments),
        Squad = squad,
    };

    /// <summary>Reads the files; an answer or a protocol that does not fit is wrong usage.</summary>
    public static ImportResult Read(IReadOnlyList<ImportSource> files, ImportOptions options)
    {
        try
        {
            return ClipboardImport.Read(files, options);
        }
        catch (ArgumentException error)
        {
            throw new UsageException(error.Message);
        }
    }

    private static DateOnly? Date(Arguments arguments)
    {
        if (arguments.Option("--date") is not { } text) return null;
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : throw new UsageException($"--date {text}: write it as 2031-03-04.");
    }

    private static IReadOnlyList<DecisionAnswer> Answers(Arguments arguments)
    {
        if (arguments.Option("--answers") is not { } file) return [];
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(file));
            return [.. json.RootElement.EnumerateObject().Select(answer => new DecisionAnswer(answer.Name, answer.Value.GetString() ?? ""))];
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException or IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"--answers {file} cannot be read as one JSON object of texts: {error.Message}");
        }
    }
}
