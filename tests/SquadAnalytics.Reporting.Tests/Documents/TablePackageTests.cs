using System.Text;
using System.Text.Json;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class TablePackageTests
{
    [Fact]
    public void Every_table_is_a_file_whose_columns_are_described()
    {
        var files = TablePackage.Of("A report", [Tables.LongSessions(Examples.Squad()), Tables.Changes(Examples.Changes(), Examples.Squad(), new NumberFormat(1))]);
        Assert.Equal(["table-01.csv", "table-02.csv", "datapackage.json"], files.Select(file => file.Name));
        using var package = JsonDocument.Parse(files[2].Content);
        var fields = package.RootElement.GetProperty("resources")[0].GetProperty("schema").GetProperty("fields").EnumerateArray().ToList();
        Assert.Equal(["athlete", "date", "occasion", "protocol", "sets timed", "session total (s)"], fields.Select(field => field.GetProperty("name").GetString()));
        Assert.Equal(["string", "date", "number", "string", "number", "number"], fields.Select(field => field.GetProperty("type").GetString()));
        Assert.Equal("s", fields[5].GetProperty("unit").GetString());
        var header = Encoding.UTF8.GetString(files[0].Content.Span).Split("\r\n")[0];
        Assert.Equal("athlete,date,occasion,protocol,sets timed,session total (s)", header);
    }

    [Fact]
    public void Long_tables_hold_codes_and_no_names()
    {
        var csv = Tables.LongSets(Examples.Squad()).ToCsv() + Tables.LongSessions(Examples.Squad()).ToCsv();
        Assert.DoesNotContain("Boxer", csv, StringComparison.Ordinal);
        Assert.Contains("B7,2031-03-03,1,w,1,183.95,Timed", csv, StringComparison.Ordinal); // 367.9 / 2
    }

    [Fact]
    public void Void_sessions_are_left_out()
    {
        var squad = Examples.Squad();
        var voided = new Squad("x", squad.Athletes, squad.Protocols, [.. squad.Sessions.Select((session, k) => k == 0 ? session with { VoidReason = "fire alarm" } : session)]);
        Assert.Equal(Tables.LongSessions(squad).Rows.Count - 1, Tables.LongSessions(voided).Rows.Count);
    }
}
