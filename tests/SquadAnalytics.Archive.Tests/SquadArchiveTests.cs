using SquadAnalytics.Frames;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Archive.Tests;

public sealed class SquadArchiveTests : IDisposable
{
    private static readonly Squad Quillmere = SquadGenerator.Generate(Scenarios.Quillmere).Squad;
    private static readonly Squad Brackenholt = SquadGenerator.Generate(Scenarios.Brackenholt).Squad;
    private readonly SquadArchive _archive = new();

    public SquadArchiveTests() => _archive.Add(Quillmere);

    public void Dispose() => _archive.Dispose();

    [Fact]
    public void Every_table_of_the_squad_can_be_queried()
    {
        foreach (var table in SquadArchive.SquadTables)
        {
            var frame = SquadFrames.Of(Quillmere, table);
            var queried = _archive.Query($"SELECT * FROM {table}");
            Assert.Equal([.. frame.Columns.Select(column => column.Name), "squad"], queried.Columns.Select(column => column.Name));
            Assert.Equal(frame.Count, queried.Count);
            foreach (var column in frame.Columns) Assert.Equal(column.Texts, queried[column.Name].Texts);
        }
    }

    [Fact]
    public void Health_notes_are_not_there()
    {
        var names = _archive.Query("SELECT table_name FROM information_schema.tables")["table_name"].Texts;
        Assert.Equal(SquadArchive.SquadTables.Order(), names.Order());
        Assert.Contains("There is no table health_notes", Assert.Throws<QueryException>(() => _archive.Query("FROM health_notes")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_that_nobody_foresaw_gets_the_answer_that_the_library_gives()
    {
        var asked = _archive.Query("""
            SELECT athlete_id, min(total_s) AS best_total_s, count(*) AS tests
            FROM session_measures
            WHERE is_complete AND NOT is_void AND protocol_id = $protocol
            GROUP BY athlete_id ORDER BY athlete_id
            """, [new QueryParameter("protocol", Quillmere.Protocols[0].Id)]);
        var expected = Quillmere.Sessions.Where(session => session.IsComplete && !session.IsVoid && session.Protocol.Id == Quillmere.Protocols[0].Id)
            .GroupBy(session => session.AthleteId).OrderBy(group => group.Key, StringComparer.Ordinal).ToList();
        Assert.Equal(expected.Select(group => group.Key), asked["athlete_id"].Texts);
        Assert.Equal(expected.Select(group => (long?)group.Count()), asked["tests"].Integers);
        foreach (var (row, group) in expected.Index()) Assert.Equal(group.Min(session => session.TimesSeconds.Sum()), asked["best_total_s"].Numbers[row]!.Value, 1e-9);
    }

    [Fact]
    public void Several_squads_stand_side_by_side_and_one_added_later_is_seen()
    {
        Assert.Equal(1, _archive.Query("SELECT count(DISTINCT squad) AS squads FROM sessions")["squads"].Integers[0]);
        _archive.Add(Brackenholt);
        var counts = _archive.Query("SELECT squad, count(*) AS sessions FROM sessions GROUP BY squad ORDER BY squad");
        Assert.Equal(new[] { Quillmere, Brackenholt }.OrderBy(squad => squad.Name, StringComparer.Ordinal).Select(squad => (long?)squad.Sessions.Count), counts["sessions"].Integers);
        Assert.Throws<ArgumentException>(() => _archive.Add(Quillmere));
    }

    [Theory]
    [InlineData("FROM sessions")]
    [InlineData("FROM main.sessions")]
    [InlineData("FROM archive.sessions")]
    [InlineData("FROM archive.main.sessions")]
    [InlineData("WITH athletes AS (SELECT 1 AS x) SELECT s.* FROM \"Sessions\" s, athletes")]
    public void A_table_is_loaded_however_it_is_named(string sql) => Assert.Equal(Quillmere.Sessions.Count, _archive.Query(sql).Count);

    [Fact]
    public void A_frame_can_be_joined_and_replaced()
    {
        _archive.Put("weights", new Frame(FrameColumn.OfTexts("athlete_id", [Quillmere.Athletes[0].Id]), FrameColumn.OfNumbers("body_mass_kg", [61.5])));
        Assert.Equal(61.5, _archive.Query("SELECT body_mass_kg FROM athletes JOIN weights USING (athlete_id)")["body_mass_kg"].Numbers[0]);
        _archive.Put("weights", new Frame(FrameColumn.OfIntegers("n", [1, 2])));
        Assert.Equal(3, _archive.Query("SELECT sum(n) AS n FROM Weights")["n"].Integers[0]);
        Assert.Throws<ArgumentException>(() => _archive.Put("sessions", Frame.Of([1])));
        Assert.Throws<ArgumentException>(() => _archive.Put("a b", Frame.Of([1])));
    }

    [Theory]
    [InlineData("SELEC 1", 1, 1)]
    [InlineData("SELECT total_s\nFROM session_measures\nWHERE ORDER BY total_s", 3, 7)]
    [InlineData("SELECT 'ä' AS x,\n  totl_s\nFROM session_measures", 2, 3)]
    [InlineData("SELECT *\nFROM evenings", 2, 6)]
    [InlineData("SELECT *\nFROM sessions,\n  read_text('/etc/hostname')", 3, 3)]
    public void What_is_wrong_is_said_with_its_place(string sql, int line, int column)
    {
        var error = Assert.Throws<QueryException>(() => _archive.Query(sql));
        Assert.Equal(new QueryPlace(line, column), error.Place);
        Assert.DoesNotContain("LINE", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Messages_tell_what_would_do()
    {
        Assert.Contains("Only queries can be run", Message("UPDATE sessions SET place = 'x'"), StringComparison.Ordinal);
        Assert.Contains("There are 2 queries", Message("SELECT 1; SELECT 2"), StringComparison.Ordinal);
        Assert.Contains("There is no query", Message("-- nothing"), StringComparison.Ordinal);
        Assert.Contains("asks for $athlete", Message("SELECT $athlete AS a"), StringComparison.Ordinal);
        Assert.Contains("not a finite number", Message("SELECT 'nan'::DOUBLE AS x"), StringComparison.Ordinal);
        using var small = new SquadArchive(new ArchiveLimits { Rows = 10 });
        Assert.Contains("more than 10 rows", Assert.Throws<QueryException>(() => small.Query("FROM range(11)")).Message, StringComparison.Ordinal);

        string Message(string sql) => Assert.Throws<QueryException>(() => _archive.Query(sql)).Message;
    }

    [Fact]
    public void Common_forms_of_queries_run_and_every_type_comes_back()
    {
        var types = _archive.Query("SELECT 1::HUGEINT AS a, 2.50::DECIMAL(5,2) AS b, DATE '2031-03-04' AS c, TIMESTAMP '2031-03-04 18:30:00' AS d, true AS e, [1, 2] AS f, NULL AS g, 'x' AS a");
        Assert.Equal([FrameType.WholeNumber, FrameType.Number, FrameType.Date, FrameType.Moment, FrameType.Flag, FrameType.Text], types.Columns.Take(6).Select(column => column.Type));
        Assert.Equal(["1", "2.5", "2031-03-04", "2031-03-04 18:30:00", "true", "[1, 2]", null, "x"], types.Columns.Select(column => column.Texts[0]));
        Assert.Equal("a_2", types.Columns[^1].Name);
        Assert.Equal(5, _archive.Query("DESCRIBE set_times").Count);
        Assert.True(_archive.Query("SUMMARIZE session_measures").Count > 20);
        Assert.Equal(SquadArchive.SquadTables.Count, _archive.Query("SHOW TABLES").Count);
        Assert.True(_archive.Query("PIVOT set_times ON status IN ('timed', 'not_recorded') USING count(*) GROUP BY set_number").Count > 1);
        Assert.Equal(15, _archive.Query("WITH RECURSIVE a AS (SELECT 1 AS n UNION ALL SELECT n + 1 FROM a WHERE n < 5) SELECT sum(n) AS n FROM a")["n"].Integers[0]);
    }

    [Fact]
    public void Tables_of_many_squads_are_loaded_one_after_another()
    {
        using var many = new SquadArchive();
        many.Load([Quillmere, Brackenholt], "set_times", "sessions");
        Assert.Equal(Quillmere.Sessions.Concat(Brackenholt.Sessions).Sum(session => session.Sets.Count), many.Query("SELECT count(*) AS n FROM set_times")["n"].Integers[0]);
    }
}
