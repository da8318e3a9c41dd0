using System.Globalization;
using CsCheck;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.Import;
using SquadAnalytics.Statistics;
using SquadAnalytics.Storage;
using SquadAnalytics.Tests.Storage;

namespace SquadAnalytics.Tests.Invariance;

/// <summary>Files that overlap make one logbook, in whichever order and however many at a time they are imported.</summary>
public sealed class MergedFilesTests
{
    private const int Athletes = 9;

    [Fact]
    public void Overlapping_files_make_the_same_logbook_in_any_order_together_or_as_one_file() => Gen.Int[1, 1000].Sample(seed =>
    {
        var squad = Draw(seed);
        var (first, second) = Overlapping(squad, new SeededRandom(seed));
        IReadOnlyList<string> logbooks = [.. Ways(first, second).Select(files => Imported(squad, files, AllKept).Fingerprint)];
        Assert.Single(logbooks.Distinct());
        Assert.NotEqual(logbooks[0], Imported(squad, [[first]], AllKept).Fingerprint);
    }, iter: 3);

    [Fact]
    public void Every_analysis_of_the_merged_logbook_says_what_it_says_of_the_sessions_themselves() => Gen.Int[1, 1000].Sample(seed =>
    {
        var drawn = Draw(seed);
        // A file says in which steps its times were written.
        var squad = new Squad(drawn.Name, drawn.Athletes, drawn.Protocols, [.. drawn.Sessions.Select(session => session with { TimingResolution = new Seconds(0.1) })]) { Contexts = drawn.Contexts, Blocks = drawn.Blocks };
        var (first, second) = Overlapping(squad, new SeededRandom(seed));
        var merged = Imported(squad, [[first], [second]], AllKept).Squad;
        foreach (var analysis in SquadAnalyses.All.Keys) Numbers.AssertSame(SquadAnalyses.Numbers(analysis, squad), SquadAnalyses.Numbers(analysis, merged));
    }, iter: 1);

    // The rule of the importer: what the logbook has stays until a person says otherwise, and of two records in one import neither counts before that.
    [Fact]
    public void Different_times_of_one_test_are_asked_and_never_merged() => Gen.Select(Gen.Int[1, 1000], Gen.Int[0, 224]).Sample((seed, which) =>
    {
        var squad = Draw(seed);
        var (first, second) = (squad.Sessions.Select(session => Row(session)).ToArray(), new[] { Row(squad.Sessions[which], later: 0.1) });
        var without = Imported(squad, [[[.. first.Where((_, row) => row != which)]]], AllKept).Fingerprint;
        Assert.Equal(Imported(squad, [[first]], AllKept).Fingerprint, Imported(squad, [[first], [second]], result => { if (result.Report.Rows > 1) AllKept(result); else AskedOnce(result); }).Fingerprint);
        Assert.Equal(without, Imported(squad, [[[.. first, .. second]]], AskedOnce).Fingerprint);
        Assert.Equal(without, Imported(squad, [[second, first]], AskedOnce).Fingerprint);
    }, iter: 2);

    private static void AllKept(ImportResult result)
    {
        Assert.Empty(result.Decisions);
        Assert.Equal(result.Report.Rows, result.Report.Kept);
    }

    private static void AskedOnce(ImportResult result) => Assert.Equal(DecisionKind.Duplicate, Assert.Single(result.Decisions).Kind);

    /// <summary>Imports one after the other, each of one file or several: two files by themselves in both orders, both together, and what they hold as one file.</summary>
    private static IReadOnlyList<string[][]>[] Ways(string[] first, string[] second) => [[[first], [second]], [[second], [first]], [[first, second]], [[second, first]], [[[.. first, .. second]]], [[[.. second, .. first]]]];

    private static Squad Draw(int seed) => LargeSquad.Draw(Athletes * LargeSquad.SessionsEach, seed);

    /// <summary>Every test stands in the first file, the second, or both, in any order.</summary>
    private static (string[] First, string[] Second) Overlapping(Squad squad, SeededRandom random)
    {
        var places = squad.Sessions.Select(session => (Row: Row(session), Place: random.NextIndex(3))).ToList();
        string[] File(int notHere) => [.. random.Shuffle([.. places.Where(test => test.Place != notHere).Select(test => test.Row)])];
        return (File(0), File(1));
    }

    private static string Row(Session session, double later = 0) =>
        string.Create(CultureInfo.InvariantCulture, $"{session.AthleteId},{session.Date:yyyy-MM-dd},{session.Protocol.Id},{string.Join(',', session.TimesSeconds.Select(time => (time + later).ToString("0.0", CultureInfo.InvariantCulture)))}");

    /// <summary>A logbook of the squad without its sessions, and then what the imports add.</summary>
    private static (string Fingerprint, Squad Squad) Imported(Squad squad, IReadOnlyList<string[][]> imports, Action<ImportResult> check)
    {
        using var temp = new TempFolder();
        using var logbook = Logbook.Create(temp.Logbook, squad.Name);
        logbook.Commit(new LogbookChange("roster")
        {
            Athletes = [.. squad.Athletes.Select(athlete => athlete with { Aliases = [athlete.Id] })],
            Protocols = squad.Protocols,
            Contexts = squad.Contexts,
            Blocks = squad.Blocks,
        });
        var header = $"Athlete,Date,Protocol,{string.Join(',', Enumerable.Range(1, squad.Protocols[0].Sets).Select(set => $"Set {set}"))}";
        foreach (var (number, files) in imports.Index())
        {
            ImportSource[] sources = [.. files.Select((rows, file) => ImportSource.FromText($"{number}-{file}.csv", string.Join('\n', [header, .. rows])))];
            var result = ClipboardImport.Read(sources, new ImportOptions { Squad = logbook.Squad });
            check(result);
            logbook.Commit(ImportAcceptance.ChangeOf(result, sources, logbook.HeldRows));
        }

        return (logbook.Fingerprint, logbook.Squad);
    }
}
