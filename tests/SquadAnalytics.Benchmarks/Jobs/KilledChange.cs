using System.Globalization;
using System.Text;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Numbered changes that leave their number in many files, so that a mixture of two states shows.</summary>
internal static class KilledChange
{
    private static readonly DateOnly FirstDay = new(2000, 1, 1);
    private static readonly Protocol Circuit = new("p1", "Invented circuit", [new Station("burpees", 8)], 5, new Seconds(100));

    public static string Name(int number) => string.Create(CultureInfo.InvariantCulture, $"state {number}");

    /// <summary>The first state.</summary>
    /// <param name="earlier">Number of sessions of somebody else: more rows take longer to write.</param>
    public static LogbookChange First(int earlier) => new(Name(0))
    {
        Athletes = [new Athlete("a1", Name(0), "A1"), new Athlete("a2", "Invented Two", "A2")],
        Protocols = [Circuit],
        Sessions = [.. Enumerable.Range(1, earlier).Select(day => Test("a2", day))],
        Blocks = [new TrainingBlock("b1", Name(0), FirstDay, FirstDay)],
    };

    public static LogbookChange Next(Squad squad, int number) => new(Name(number))
    {
        SquadName = Name(number),
        Athletes = [squad.Athlete("a1") with { DisplayName = Name(number) }],
        Sessions = [Test("a1", number)],
        Contexts = [new DayContext("a1", FirstDay.AddDays(number)) { Minutes = number }],
        Events = [new AthleteEvent("e1", "a1", FirstDay.AddDays(number), EventKind.Bout)],
        Blocks = [new TrainingBlock("b1", Name(number), FirstDay, FirstDay)],
        HealthNotes = [new HealthNote("n1", "a1", FirstDay, Name(number))],
        ImportCopies = [new ImportCopy(Copy(number), Encoding.UTF8.GetBytes(Name(number)))],
    };

    public static int NumberOf(Logbook logbook) => logbook.Squad.SessionsOf("a1").Count;

    /// <summary>Opens the logbook and compares every file's number.</summary>
    public static KilledState Check(string folder, int acknowledged)
    {
        try
        {
            using var logbook = Logbook.Open(folder);
            var number = NumberOf(logbook);
            var found = string.Join(", ", Numbers(logbook, folder).Distinct(StringComparer.Ordinal));
            var fault = found != Name(number) ? $"{number} sessions, but files say {found}"
                : number != acknowledged && number != acknowledged + 1 ? $"state {number} found, but {acknowledged} was acknowledged"
                : Directory.Exists(Path.Combine(folder, ".pending")) ? "something is left of the change"
                : UndoFault(logbook, number);
            return new KilledState(logbook.Recovery?.Kind, fault);
        }
        catch (Exception error) when (error is IOException or LogbookContentException or UnauthorizedAccessException)
        {
            return new KilledState(null, error.Message);
        }
    }

    private static IEnumerable<string> Numbers(Logbook logbook, string folder)
    {
        var squad = logbook.Squad;
        yield return squad.Name;
        yield return squad.Athlete("a1").DisplayName;
        yield return squad.Blocks[0].Name;
        yield return Name(squad.Contexts.Count);
        yield return logbook.LastAccept?.Description ?? "no kept state";
        if (squad.Contexts.Count == 0) yield break;
        yield return Name(squad.Events[0].Date.DayNumber - FirstDay.DayNumber);
        yield return logbook.HealthNotes[0].Text;
        yield return Name(Directory.GetFiles(logbook.ImportsFolder).Length);
        yield return File.ReadAllText(Path.Combine(logbook.ImportsFolder, Copy(squad.Contexts.Count)));
        yield return Name((int)squad.SessionsOf("a1")[^1].TimesSeconds[0] - 40);
        if (Directory.EnumerateFileSystemEntries(folder).Any(entry => entry.EndsWith(".new", StringComparison.Ordinal))) yield return "a temporary file";
    }

    private static string Copy(int number) => string.Create(CultureInfo.InvariantCulture, $"import-{number}.csv");

    /// <summary>Undoing and doing again must meet the neighbouring state and come back.</summary>
    private static string? UndoFault(Logbook logbook, int number)
    {
        if (number == 0) return null;
        logbook.UndoLastAccept();
        var before = NumberOf(logbook);
        logbook.UndoLastAccept();
        return before == number - 1 && NumberOf(logbook) == number ? null : $"undo from state {number} led to {before}, undoing that to {NumberOf(logbook)}";
    }

    private static Session Test(string athleteId, int number) =>
        Session.FromTimes(string.Create(CultureInfo.InvariantCulture, $"s-{athleteId}-{number}"), athleteId, FirstDay.AddDays(number), Circuit, 40 + number, 50, 51, 52, 53);
}
