using System.Globalization;
using System.Text;
using System.Text.Unicode;
using SquadAnalytics.Import;

namespace SquadAnalytics.SampleSquad;

/// <summary>Imports damaged files and looks for a crash, a row that is not accounted for, or a result that depends on the machine's culture.</summary>
public static class ImportFuzz
{
    private static readonly CultureInfo[] Cultures = [CultureInfo.GetCultureInfo("de-DE"), CultureInfo.GetCultureInfo("tr-TR")];

    private static readonly Squad Squad = SquadGenerator.Generate(Scenarios.Quillmere).Squad;

    /// <summary>Imports the damaged file of a seed three times: in the invariant culture, in German and in Turkish.</summary>
    /// <returns>What is wrong, or null.</returns>
    public static string? Problem(int seed)
    {
        var file = MutatedFile.Make(seed);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            var options = Options(seed);
            var result = ClipboardImport.Read(ImportSource.FromBytes(file.Name, file.Content), options);
            var account = Account(result);
            if (Unaccounted(result, file) is { } unaccounted) return $"{file}: {unaccounted}";
            CultureInfo.CurrentCulture = Cultures[seed % Cultures.Length];
            return Account(ClipboardImport.Read(ImportSource.FromBytes(file.Name, file.Content), options)) == account ? null : $"{file}: reads differently under {CultureInfo.CurrentCulture.Name}";
        }
#pragma warning disable CA1031 // Whatever escapes from an import is what is looked for here.
        catch (Exception error)
#pragma warning restore CA1031
        {
            return $"{file}: {error}";
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static ImportOptions Options(int seed) => new()
    {
        Squad = seed % 3 == 0 ? null : Squad,
        DateOrder = seed % 4 == 0 ? DateOrder.DayMonthYear : null,
        Date = seed % 5 == 0 ? new DateOnly(2031, 4, 3) : null,
        DecimalMark = seed % 7 == 0 ? DecimalMark.Comma : null,
        Times = seed % 11 == 0 ? TimeMeaning.Clock : null,
        Protocol = seed % 3 != 0 && seed % 13 == 0 ? "six-five" : null,
        AcceptNewAthletes = seed % 2 == 0,
    };

    private static string Account(ImportResult result)
    {
        var account = new StringBuilder().AppendLine(result.Report.ToString());
        foreach (var session in result.Sessions) account.Append(CultureInfo.InvariantCulture, $"{session.Id} {session} {session.TimingResolution} {string.Join(' ', session.Stations)}").AppendLine();
        foreach (var row in result.Report.Refused) account.AppendLine(row.ToString());
        foreach (var decision in result.Decisions) account.AppendLine(decision.ToString());
        foreach (var note in result.Report.Notes) account.AppendLine(note);
        foreach (var warning in result.Report.Warnings) account.AppendLine(warning.ToString());
        return account.ToString();
    }

    private static string? Unaccounted(ImportResult result, MutatedFile file)
    {
        var report = result.Report;
        if (report.Rows != report.Kept + report.RefusedRows + report.DecisionRows) return report.ToString();
        if (report.Refused.Any(row => row.Problems.Count == 0)) return "a refused row has no problem";
        if (report.Held.Any(row => row.DecisionIds.Count == 0)) return "a held row has no decision";
        if (!report.Held.Select(row => row.Place).ToHashSet().SetEquals(result.Decisions.SelectMany(decision => decision.Rows))) return "the decisions and the held rows do not name the same rows";
        if (report.Refused.Select(row => row.Place).Concat(report.Held.Select(row => row.Place)).GroupBy(place => place).Any(group => group.Count() > 1)) return "a row stands in two places of the account";
        return LinesOf(file) is { } lines && (report.Lines < lines.Least || report.Lines > lines.Most)
            ? FormattableString.Invariant($"{report.Lines} lines accounted for, but the file has {lines.Least} to {lines.Most}")
            : null;
    }

    // Counted without the importer: lines that hold something. Lines of nothing but separators may count or not; files with quotation marks are left out, a line may break within them.
    private static Range? LinesOf(MutatedFile file)
    {
        if (file.Name.EndsWith(".xlsx", StringComparison.Ordinal) || !Utf8.IsValid(file.Content) || file.Content.AsSpan().ContainsAny((byte)'"', (byte)0) || file.Content.AsSpan().StartsWith("sep="u8)) return null;
        var lines = Encoding.UTF8.GetString(file.Content).TrimStart('\uFEFF').Split(['\r', '\n']).Where(line => !string.IsNullOrWhiteSpace(line)).ToList();
        var ofSeparators = lines.Count(line => line.All(sign => char.IsWhiteSpace(sign) || sign is ';' or ',' or '|'));
        return lines.Count == 0 ? null : new Range(lines.Count - ofSeparators, lines.Count);
    }

    private readonly record struct Range(int Least, int Most);
}
