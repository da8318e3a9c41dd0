using DuckDB.NET.Data;

namespace SquadAnalytics.Archive.Tests;

/// <summary>What a query may not reach: files, the network, extensions, settings, and the process.</summary>
public sealed class DoorTests : IDisposable
{
    private static readonly string[] SettingsOnly = [.. ArchiveDatabase.Doors];
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("squad-doors-");

    public static TheoryData<string> Attacks =>
    [
        "COPY (SELECT 1 AS x) TO '{out}'",
        "COPY (SELECT 1 AS x) TO '{out}' (FORMAT parquet)",
        "EXPORT DATABASE '{out}'",
        "ATTACH '{out}' AS outside",
        "SELECT * FROM read_csv('{secret}')",
        "SELECT * FROM read_text('{secret}')",
        "SELECT * FROM read_blob('{secret}')",
        "SELECT * FROM read_json('{secret}')",
        "SELECT * FROM '{secret}'",
        "SELECT * FROM glob('{folder}/*')",
        "SELECT * FROM sniff_csv('{secret}')",
        "SELECT * FROM read_parquet('http://127.0.0.1:9/x.parquet')",
        "INSTALL httpfs",
        "LOAD httpfs",
        "LOAD '{out}'",
        "SET enable_external_access = true",
        "SET lock_configuration = false",
        "RESET lock_configuration",
        "SET memory_limit = '64GB'",
        "SET threads = 64",
        "SET temp_directory = '{folder}'",
        "SET log_query_path = '{out}'",
        "PRAGMA memory_limit = '64GB'",
        "PRAGMA enable_profiling = 'json'",
        "PRAGMA profiling_output = '{out}'",
    ];

    public static TheoryData<string> AttacksOnTheProcess =>
    [
        "CALL enable_logging(storage = 'file', storage_path = '{folder}')",
        "SELECT * FROM enable_logging(storage = 'file', storage_path = '{folder}')",
        "WITH a AS (SELECT * FROM enable_logging()) SELECT 1",
        "SELECT * FROM enable_profiling()",
        "SELECT * FROM arrow_scan(1, 1, 1)",
        "SELECT * FROM query('SELECT * FROM read_text(''{secret}'')')",
        "SELECT * FROM duckdb_settings()",
        "SELECT write_log('x')",
        "ATTACH ':memory:' AS more",
        "CREATE TABLE mine AS SELECT 1",
        "DROP TABLE sessions",
        "DELETE FROM sessions",
        "CREATE SECRET s (TYPE http)",
        "EXPLAIN ANALYZE SELECT 1",
        "SELECT 1; COPY (SELECT 1) TO '{out}'",
    ];

    private string Secret => Path.Combine(_folder.FullName, "secret.csv");

    private string Out => Path.Combine(_folder.FullName, "out.file");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Attacks))]
    [MemberData(nameof(AttacksOnTheProcess))]
    public void A_query_that_reaches_out_is_refused_before_it_is_run(string attack)
    {
        using var archive = new SquadArchive();
        var sql = Made(attack);
        Assert.Throws<QueryException>(() => archive.Query(sql));
        Assert.Equal([Secret], Directory.GetFileSystemEntries(_folder.FullName));
        Assert.Equal(1, archive.Query("SELECT 1 AS x")["x"].Integers[0]);
    }

    [Theory]
    [MemberData(nameof(Attacks))]
    public void Even_run_directly_the_database_itself_refuses_it(string attack)
    {
        using var archive = new SquadArchive();
        var sql = Made(attack);
        Assert.Throws<DuckDBException>(() => archive.Database.Execute(sql));
        Assert.Equal([Secret], Directory.GetFileSystemEntries(_folder.FullName));
    }

    [Theory]
    [InlineData("COPY (SELECT 1 AS x) TO '{out}'", "SET enable_external_access = false")]
    [InlineData("ATTACH '{out}' AS outside", "SET enable_external_access = false")]
    [InlineData("SELECT * FROM read_csv('{secret}')", "SET enable_external_access = false")]
    [InlineData("SELECT * FROM glob('{folder}/*')", "SET enable_external_access = false")]
    [InlineData("SET memory_limit = '4GB'", "SET lock_configuration = true")]
    [InlineData("SET threads = 3", "SET lock_configuration = true")]
    [InlineData("SET autoload_known_extensions = true", "SET lock_configuration = true")]
    public void Without_its_door_the_attack_succeeds(string attack, string door)
    {
        using var open = new SquadArchive(null, [.. SettingsOnly.Where(one => one != door)]);
        open.Database.Execute(Made(attack));
        using var closed = new SquadArchive(null, SettingsOnly);
        Assert.Throws<DuckDBException>(() => closed.Database.Execute(Made(attack)));
    }

    [Fact]
    public void No_extension_is_fetched_or_loaded_of_itself()
    {
        using var archive = new SquadArchive();
        foreach (var setting in (string[])["autoinstall_known_extensions", "autoload_known_extensions", "allow_community_extensions", "enable_external_access"])
            Assert.Equal("false", archive.Database.Scalar($"SELECT current_setting('{setting}')")!.ToString(), ignoreCase: true);
        Assert.Equal("", archive.Database.Scalar("SELECT current_setting('temp_directory')"));
    }

    [Fact]
    public void A_query_that_needs_more_memory_than_allowed_fails_and_the_next_one_runs()
    {
        using var archive = new SquadArchive(new ArchiveLimits { MemoryBytes = 48L << 20, Threads = 1 });
        var error = Assert.Throws<QueryException>(() => archive.Query("SELECT count(*) AS n FROM (SELECT DISTINCT hash(i), repeat('x', 40) || i FROM range(5000000) t(i))"));
        Assert.StartsWith("The query needs more memory than it may have", error.Message, StringComparison.Ordinal);
        Assert.Equal(3, archive.Query("SELECT count(*) AS n FROM range(3)")["n"].Integers[0]);
    }

    [Fact]
    public void Memory_and_threads_are_limited()
    {
        using var archive = new SquadArchive(new ArchiveLimits { MemoryBytes = 100L << 20, Threads = 1 });
        Assert.Equal("100.0 MiB", archive.Database.Scalar("SELECT current_setting('memory_limit')"));
        Assert.Equal(1L, Convert.ToInt64(archive.Database.Scalar("SELECT current_setting('threads')"), System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task A_query_that_takes_too_long_can_be_stopped()
    {
        using var archive = new SquadArchive();
        using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(300));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Task.Run(() => archive.Query("SELECT count(*) AS n FROM range(1000000000000) t(i) WHERE i % 7 = 8", null, stop.Token)));
        Assert.Equal(1, archive.Query("SELECT 1 AS x")["x"].Integers[0]);
    }

    private string Made(string attack)
    {
        File.WriteAllText(Secret, "a,b\n1,2\n");
        return attack.Replace("{out}", Out, StringComparison.Ordinal).Replace("{secret}", Secret, StringComparison.Ordinal).Replace("{folder}", _folder.FullName, StringComparison.Ordinal);
    }
}
