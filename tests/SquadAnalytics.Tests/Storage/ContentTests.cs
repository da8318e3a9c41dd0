using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

/// <summary>Files edited by hand: what cannot be read is named, and nothing is lost.</summary>
public sealed class ContentTests
{
    [Theory]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,1,timed,\"50,1\"", "set-times.csv, line 2, column 4 'work_s': '50,1' is not a number. Accepted: a number of 0 or more with a decimal point, in s, or nothing.")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,1,timed,", "set-times.csv, line 2, column 4 'work_s': '' is empty although the status says timed. Accepted: a time, or another status.")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,1,timed,-50.1", "is too small")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,1,timed,0", "is not above 0")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,1,quick,50.1", "column 3 'status': 'quick' is not a word used here. Accepted: one of timed, completed_untimed, not_finished, not_started, stopped_for_health, not_recorded.")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,5,timed,50.1", "column 2 'set_number': '5' is more than the protocol has. Accepted: 1 to 4.")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,2,timed,50.1", "line 3, column 2 'set_number': '2' stands there twice for this session")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s9,1,timed,50.1", "column 1 'session_id': 's9' is not in sessions.csv. Accepted: an id that stands in sessions.csv.")]
    [InlineData("set-times.csv", "s1,1,timed,50.1", "s1,1,timed", "set-times.csv, line 2: cannot be taken apart into columns. Accepted: 4 columns separated by commas, texts with commas in double quotes.")]
    [InlineData("set-times.csv", "session_id,set_number,status,work_s", "session_id;set_number;status;work_s", "set-times.csv, line 1: 'session_id;set_number;status;work_s' has no column 'session_id'. Accepted: the header session_id,set_number,status,work_s.")]
    [InlineData("set-times.csv", "session_id,set_number,status,work_s", "session_id,set_number,status,work", "has no column 'work_s'")]
    [InlineData("sessions.csv", "2031-03-04", "04/03/2031", "sessions.csv, line 2, column 3 'test_date': '04/03/2031' is not a date. Accepted: a date written yyyy-mm-dd.")]
    [InlineData("sessions.csv", "s2,a2", "s1,a2", "column 1 'session_id': 's1' stands there twice. Accepted: each session_id once.")]
    [InlineData("sessions.csv", "s2,a2", "s2,a3", "'a3' is not in athletes.csv")]
    [InlineData("sessions.csv", "s2,a2", "s2,a1", "column 4 'occasion': '1' repeats a test of the same athlete, day and protocol")]
    [InlineData("athletes.csv", "Ada Invented", "", "athletes.csv, line 2, column 2 'display_name': '' is empty. Accepted: text.")]
    [InlineData("athletes.csv", "2008", "08", "'08' is too small. Accepted: a whole number of 1900 or more, or nothing.")]
    [InlineData("day-context.csv", "7.5", "11", "'11' is too large. Accepted: a number from 0 to 10.")]
    [InlineData("day-context.csv", "true", "ja", "'ja' is neither true nor false. Accepted: true or false.")]
    [InlineData("protocol-bands.csv", "260", "200", "is not above low_total_s")]
    [InlineData("protocol-stations.csv", "quay-v1,2", "quay-v1,3", "leaves a gap")]
    [InlineData("blocks.csv", "2031-04-14", "2030-04-14", "lies before from_date")]
    [InlineData("datapackage.json", "\"layout\": 1", "\"layout\": 2", "datapackage.json, line 1: says layout 2, written by a newer version of this program. Accepted: layout 1 or less.")]
    [InlineData("datapackage.json", "\"title\"", "\"titel\"", "has no title")]
    [InlineData("datapackage.json", "{", "", "is not JSON")]
    public void A_bad_cell_is_named_with_file_line_column_and_what_would_be_accepted(string file, string original, string edited, string expected)
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var path = Path.Combine(temp.Logbook, file);
        var text = File.ReadAllText(path);
        var place = text.IndexOf(original, StringComparison.Ordinal);
        Assert.True(place >= 0, text);
        text = string.Concat(text.AsSpan(0, place), edited, text.AsSpan(place + original.Length));
        File.WriteAllText(path, text);

        var error = Assert.Throws<LogbookContentException>(() => Logbook.Open(temp.Logbook));
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
        Assert.Equal(file, error.Problems[0].File);
        Assert.Equal(text, File.ReadAllText(path));
    }

    [Fact]
    public void Every_bad_line_is_named_not_only_the_first()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var path = temp.At("logbook/set-times.csv");
        File.WriteAllText(path, File.ReadAllText(path).Replace(",timed,", ",timed,x", StringComparison.Ordinal));
        var error = Assert.Throws<LogbookContentException>(() => Logbook.Open(temp.Logbook));
        Assert.Equal([2L, 6, 7, 8, 9], error.Problems.Select(problem => problem.Line));
        Assert.EndsWith("(5 problems in all.)", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_another_encoding_is_named_with_the_line()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        File.AppendAllText(temp.At("logbook/athletes.csv"), "a3,Zoë Invented,ZI,,,,female\n", System.Text.Encoding.Latin1);
        var error = Assert.Throws<LogbookContentException>(() => Logbook.Open(temp.Logbook));
        Assert.Equal("athletes.csv, line 4: holds bytes that are not UTF-8 text. Accepted: a file saved as CSV UTF-8.", error.Message);
    }

    [Fact]
    public void A_missing_table_is_named()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        File.Delete(temp.At("logbook/events.csv"));
        Assert.Contains("events.csv, line 1: is missing", Assert.Throws<LogbookContentException>(() => Logbook.Open(temp.Logbook)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_of_ones_own_is_refused_because_it_would_be_lost()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var path = temp.At("logbook/blocks.csv");
        File.WriteAllLines(path, File.ReadAllLines(path).Select((line, row) => line + (row == 0 ? ",my_notes" : ",x")));
        Assert.Contains("has a column 'my_notes' that is not known here and would be lost", Assert.Throws<LogbookContentException>(() => Logbook.Open(temp.Logbook)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_spreadsheet_does_on_saving_is_read()
    {
        using var temp = new TempFolder();
        string fingerprint;
        using (var logbook = Invented.Filled(temp)) fingerprint = logbook.Fingerprint;

        // A byte order mark, CRLF line ends, every text quoted, columns moved, TRUE in capitals.
        var path = temp.At("logbook/day-context.csv");
        var rows = File.ReadAllLines(path).Select(line => line.Split(',')).Select(cells => string.Join(',', cells.Reverse().Select(cell => $"\"{cell}\"")));
        File.WriteAllText(path, "\uFEFF" + string.Join("\r\n", rows).Replace("true", "TRUE", StringComparison.Ordinal) + "\r\n");

        using var again = Logbook.Open(temp.Logbook);
        Assert.Equal(Invented.Everything.Contexts, again.Squad.Contexts);
        Assert.NotEqual(fingerprint, again.Fingerprint);
    }

    [Fact]
    public void A_reload_that_fails_keeps_what_was_read_before()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        File.AppendAllText(temp.At("logbook/events.csv"), "e3,a1,gestern,bout,\n");
        Assert.Throws<LogbookContentException>(logbook.Reload);
        Assert.Equal(2, logbook.Squad.Sessions.Count);
        Assert.Equal(["events.csv"], Assert.Throws<LogbookChangedOutsideException>(() => logbook.VoidSession("s1", "test")).Files);
    }
}
