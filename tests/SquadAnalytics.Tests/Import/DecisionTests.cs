using SquadAnalytics.Import;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

/// <summary>Whatever is ambiguous is asked: its rows wait, nothing is kept of them, and the answer settles them.</summary>
public sealed class DecisionTests
{
    private const string Header = "Athlete;Date;Protocol;Set 1;Set 2;Set 3;Set 4\n";

    [Fact]
    public void An_ambiguous_date_waits_for_the_order_of_day_and_month()
    {
        const string text = Header + "BL;04/03/2031;quay-v1;62;63;64;69\nZB;25/03/2031;quay-v1;70;71;72;73\n";
        var asked = Read(text, Known);
        var decision = Assert.Single(asked.Decisions);
        Assert.Equal((DecisionKind.DateOrder, "date-order:clip.csv"), (decision.Kind, decision.Id));
        Assert.Contains("04/03/2031", decision.Text, StringComparison.Ordinal);
        Assert.Equal([2], decision.Rows.Select(row => row.Line));
        Assert.Equal((1, 1), (asked.Report.Kept, asked.Report.DecisionRows));
        Assert.Equal(["BL", "04/03/2031"], asked.Report.Held[0].Cells.Take(2).Select(cell => cell.Text));

        Assert.Equal(new DateOnly(2031, 3, 4), Read(text, Known.Answering(decision.Id, "dmy")).NewSessions[0].Date);
        Assert.Equal(new DateOnly(2031, 4, 3), Read(text, Known.Answering(decision.Id, "mdy")).NewSessions[0].Date);
        Assert.Equal(2, Read(text, Known with { DateOrder = DateOrder.DayMonthYear }).Report.Kept);
        Assert.Equal(1, Read(text, Known with { DateOrder = DateOrder.MonthDayYear }).Report.RefusedRows);
    }

    [Fact]
    public void A_missing_date_is_asked_once_for_the_block()
    {
        const string text = "Name;Protocol;Set 1;Set 2;Set 3;Set 4\nBL;quay-v1;62;63;64;69\nZB;quay-v1;70;71;72;73\n";
        var decision = Assert.Single(Read(text, Known).Decisions);
        Assert.Equal(2, decision.Rows.Count);
        Assert.All(Read(text, Known.Answering(decision.Id, "2031-03-04")).NewSessions, session => Assert.Equal(Date, session.Date));
        Assert.All(Read(text, Known with { Date = Date }).NewSessions, session => Assert.Equal(Date, session.Date));
        Assert.Throws<ArgumentException>(() => Read(text, Known.Answering(decision.Id, "yyyy-mm-dd")));
        Assert.Throws<ArgumentException>(() => Read(text, Known.Answering(decision.Id, "soon")));
    }

    [Theory]
    [InlineData("bo lindqvist")]
    [InlineData("Bo  Lindqvist")]
    [InlineData("\"Lindqvist, Bo\"")]
    [InlineData("BO LINDQVIST")]
    [InlineData("Bo Lindquist")]
    public void A_name_that_only_resembles_is_never_merged_in_silence(string name)
    {
        var text = Header + $"{name};2031-03-04;quay-v1;62;63;64;69\n";
        var asked = Read(text, Known);
        var decision = Assert.Single(asked.Decisions);
        Assert.Equal(["Bo Lindqvist [BL]", "athlete CODE", "new athlete", "leave out"], decision.Choices);
        Assert.Empty(asked.NewSessions);

        var same = Read(text, Known.Answering(decision.Id, "Bo Lindqvist [BL]"));
        Assert.Equal("a1", Assert.Single(same.NewSessions).AthleteId);
        Assert.Equal([name.Trim('"')], Assert.Single(same.ChangedAthletes).Aliases);
        var other = Read(text, Known.Answering(decision.Id, "new athlete"));
        Assert.Equal(other.NewAthletes[0].Id, Assert.Single(other.NewSessions).AthleteId);
    }

    [Fact]
    public void A_confirmed_spelling_is_known_the_next_time()
    {
        var squad = new Squad("Quay", [Bo with { Aliases = ["bo lindqvist"] }, Zoe], [Quay], []);
        Assert.Equal(1, Read(Header + "bo lindqvist;2031-03-04;quay-v1;62;63;64;69\n", new ImportOptions { Squad = squad }).Report.Kept);
    }

    [Fact]
    public void A_name_that_nobody_has_is_a_decision_unless_new_athletes_are_accepted()
    {
        const string text = Header + "Ада Нова;2031-03-04;quay-v1;62;63;64;69\n";
        Assert.Equal(["athlete CODE", "new athlete", "leave out"], Assert.Single(Read(text, Known).Decisions).Choices);
        Assert.Equal("Ада Нова", Assert.Single(Read(text, Known with { AcceptNewAthletes = true }).NewAthletes).DisplayName);
    }

    [Fact]
    public void A_name_that_is_like_none_can_be_given_to_anybody_and_is_known_the_next_time()
    {
        const string text = Header + "Squirrel;2031-03-04;quay-v1;62;63;64;69\n";
        var result = Read(text, Known.Answering("name:Squirrel", "athlete bl"));
        Assert.Equal("a1", Assert.Single(result.NewSessions).AthleteId);
        Assert.Equal(["Squirrel"], Assert.Single(result.ChangedAthletes).Aliases);
        Assert.Empty(result.NewAthletes);
        Assert.Throws<ArgumentException>(() => Read(text, Known.Answering("name:Squirrel", "athlete CODE")));
        Assert.Throws<ArgumentException>(() => Read(text, Known.Answering("name:Squirrel", "athlete XX")));
    }

    [Fact]
    public void Two_spellings_in_one_file_are_asked_about_without_a_squad()
    {
        const string text = "Name;Date;Set 1;Set 2\nJosé Ruíz;2031-03-04;62;63\nJose Ruiz;2031-03-11;62;64\n";
        var decision = Assert.Single(Read(text).Decisions);
        Assert.Equal(["same as 'José Ruíz'", "new athlete", "leave out"], decision.Choices);
        var same = Read(text, new ImportOptions().Answering(decision.Id, decision.Choices[0]));
        Assert.Single(same.NewSessions.Select(session => session.AthleteId).Distinct());
        Assert.Equal(2, Read(text, new ImportOptions().Answering(decision.Id, "new athlete")).NewAthletes.Count);
    }

    [Fact]
    public void A_protocol_that_is_not_written_is_asked_and_one_that_is_unknown_too()
    {
        const string text = "Name;Date;Set 1;Set 2;Set 3;Set 4\nBL;2031-03-04;62;63;64;69\n";
        var decision = Assert.Single(Read(text, Known).Decisions);
        Assert.Equal(DecisionKind.Protocol, decision.Kind);
        Assert.Same(QuayJuniors, Read(text, Known.Answering(decision.Id, "Quay circuit juniors [quay-v1-j]")).NewSessions[0].Protocol);
        Assert.Same(Quay, Read(text, Known with { Protocol = "quay-v1" }).NewSessions[0].Protocol);
        Assert.Equal(DecisionKind.Protocol, Assert.Single(Read(Header + "BL;2031-03-04;Harbour test;62;63;64;69\n", Known with { Protocol = "quay-v1" }).Decisions).Kind);
        Assert.Throws<ArgumentException>(() => Read(text, Known with { Protocol = "nothing" }));
    }

    [Fact]
    public void A_decimal_comma_is_asked_about_unless_it_is_stated()
    {
        const string text = Header + "BL;2031-03-04;quay-v1;62,4;63,1;64;69,2\nZB;2031-03-04;quay-v1;70;71;72;73\n";
        var asked = Read(text, Known);
        Assert.Equal("decimal:clip.csv", Assert.Single(asked.Decisions).Id);
        Assert.Equal((1, 1), (asked.Report.Kept, asked.Report.DecisionRows));
        Assert.Equal([62.4, 63.1, 64, 69.2], Times(Read(text, Known with { DecimalMark = DecimalMark.Comma }).NewSessions[0]));
        Assert.Equal([62.4, 63.1, 64, 69.2], Times(Read(text, Known.Answering("decimal:clip.csv", "comma")).NewSessions[0]));
        Assert.Equal(3, Read(text, Known with { DecimalMark = DecimalMark.Point }).Report.Refused[0].Problems.Count);
    }

    [Fact]
    public void A_row_that_rises_like_the_running_clock_is_asked_about_and_converted_only_when_told()
    {
        // Clock arithmetic by hand on T = 120: 62, 183 - 120, 304 - 240, 429 - 360.
        const string text = Header + "BL;2031-03-04;quay-v1;1:02;3:03;5:04;7:09\nZB;2031-03-04;quay-v1;70;71;72;73\n";
        var asked = Read(text, Known);
        var decision = Assert.Single(asked.Decisions);
        Assert.Equal(DecisionKind.Clock, decision.Kind);
        Assert.Equal([2], decision.Rows.Select(row => row.Line));
        Assert.Equal([62, 63, 64, 69], Times(Read(text, Known.Answering(decision.Id, "clock")).NewSessions[0]));
        Assert.Equal(2, Read(text, Known.Answering(decision.Id, "work")).Report.Rows);
        Assert.Equal(1, Read(text, Known with { Times = TimeMeaning.Work }).Report.RefusedRows);
        Assert.Equal([62, 63, 64, 69], Times(Read(text.Replace("70;71;72;73", "1:10;3:11;5:12;7:13", StringComparison.Ordinal), Known with { Times = TimeMeaning.Clock }).NewSessions[0]));
    }

    [Fact]
    public void A_late_start_on_the_running_clock_counts_from_the_finish_before()
    {
        // By hand, T 120 with work 110 125 130 118: starts 0 120 245 375, finishes 110 245 375 493.
        const string text = Header + "BL;2031-03-04;quay-v1;110;245;375;493\n";
        Assert.Equal([110, 125, 130, 118], Times(Read(text, Known with { Times = TimeMeaning.Clock }).NewSessions[0]));
    }

    [Fact]
    public void Without_a_known_start_interval_the_clock_needs_it_in_the_answer()
    {
        const string text = "Name;Date;Set 1;Set 2;Set 3\nAda Novák;2031-03-04;0:52;2:33;4:15\n";
        var decision = Assert.Single(Read(text).Decisions);
        Assert.Equal(["work", "clock every N s", "leave out"], decision.Choices);
        Assert.Equal([52, 53, 55], Times(Read(text, new ImportOptions().Answering(decision.Id, "clock every 100 s")).NewSessions[0]));
        Assert.Throws<ArgumentException>(() => Read(text, new ImportOptions().Answering(decision.Id, "clock every N s")));
    }

    [Fact]
    public void A_slow_down_is_not_taken_for_the_running_clock() =>
        Assert.Empty(Read(Header + "BL;2031-03-04;quay-v1;60;75;95;119\n", Known).Decisions);

    [Fact]
    public void Stations_that_rise_within_each_set_are_asked_about()
    {
        const string text = "Name;Date;Protocol;S1 burpees;S1 squats;S1 planks;S2 burpees;S2 squats;S2 planks\nBL;2031-03-04;quay-v1;22.1;40.3;60.4;23;42;64.5\n";
        var decision = Assert.Single(Read(text, Known).Decisions);
        Assert.Equal(DecisionKind.Stations, decision.Kind);
        var session = Read(text, Known.Answering(decision.Id, "cumulative")).NewSessions[0];
        Assert.Equal([22.1, 18.2, 20.1, 23, 19, 22.5], session.Stations.Select(station => station.Work!.Value.Value));
        Assert.Equal([60.4, 64.5], session.TimesSeconds);
        var clock = text.Replace("23;42;64.5", "143;162;184.5", StringComparison.Ordinal);
        Assert.Equal([22.1, 18.2, 20.1, 23, 19, 22.5], Read(clock, Known.Answering(decision.Id, "clock")).NewSessions[0].Stations.Select(station => station.Work!.Value.Value));
    }

    [Fact]
    public void The_same_test_twice_is_kept_once_and_different_times_are_a_decision()
    {
        const string row = "BL;2031-03-04;quay-v1;62;63;64;69\n";
        var same = Read(Header + row + row, Known);
        Assert.Equal((2, 1), (same.Report.Kept, same.NewSessions.Count));
        Assert.Contains(same.Report.Notes, note => note.Contains("written twice", StringComparison.Ordinal));

        var text = Header + row + "BL;2031-03-04;quay-v1;62;63;64;70\n";
        var decision = Assert.Single(Read(text, Known).Decisions);
        Assert.Equal((DecisionKind.Duplicate, 2), (decision.Kind, decision.Rows.Count));
        Assert.Equal([62, 63, 64, 70], Times(Assert.Single(Read(text, Known.Answering(decision.Id, "keep clip.csv line 3")).NewSessions)));
        Assert.Equal([1, 2], Read(text, Known.Answering(decision.Id, "further tests of that day")).NewSessions.Select(session => session.Occasion));
    }

    [Fact]
    public void What_the_logbook_has_already_is_not_added_again_and_missing_sets_are_completed()
    {
        var known = new Session("s1", "a1", Date, Quay, [new SetTime(1, new Seconds(62)), new SetTime(2, new Seconds(63))]);
        var options = new ImportOptions { Squad = new Squad("Quay", [Bo, Zoe], [Quay], [known]) };
        var same = Read(Header + "BL;2031-03-04;quay-v1;62;63;;\n", options);
        Assert.Equal((1, 0), (same.Report.Kept, same.Sessions.Count));
        var more = Read(Header + "BL;2031-03-04;quay-v1;62;63;64;69\n", options);
        Assert.Equal("s1", Assert.Single(more.ChangedSessions).Id);
        Assert.Equal(["keep the logbook's", "keep clip.csv line 2", "further tests of that day", "leave out"], Assert.Single(Read(Header + "BL;2031-03-04;quay-v1;62;64;64;69\n", options).Decisions).Choices);
    }

    [Fact]
    public void A_column_of_sessions_tells_tests_of_one_day_apart()
    {
        const string text = "athlete,date,protocol,session,set,seconds\nBL,2031-03-04,quay-v1,1,1,62\nBL,2031-03-04,quay-v1,1,2,63\nBL,2031-03-04,quay-v1,2,1,66\nBL,2031-03-04,quay-v1,2,2,67\n";
        var result = Read(text, Known);
        Assert.Equal([1, 2], result.NewSessions.Select(session => session.Occasion));
        Assert.Equal([66, 67, null, null], Times(result.NewSessions[1]));
    }

    [Fact]
    public void All_rows_of_a_long_test_wait_together()
    {
        const string text = "athlete;date;protocol;set;seconds\nBL;2031-03-04;quay-v1;1;62,4\nBL;2031-03-04;quay-v1;2;63\nZB;2031-03-04;quay-v1;1;70\n";
        var result = Read(text, Known);
        Assert.Equal((1, 2), (result.Report.Kept, result.Report.DecisionRows));
        Assert.Equal("a2", Assert.Single(result.NewSessions).AthleteId);
    }

    [Fact]
    public void An_answer_must_be_one_of_the_choices_and_one_that_nobody_asked_for_is_noted()
    {
        const string text = Header + "BL;04/03/2031;quay-v1;62;63;64;69\n";
        var error = Assert.Throws<ArgumentException>(() => Read(text, Known.Answering("date-order:clip.csv", "backwards")));
        Assert.Contains("dmy, mdy", error.Message, StringComparison.Ordinal);
        Assert.Contains(Read(text, Known.Answering("name:nobody", "new athlete")).Report.Notes, note => note.Contains("'name:nobody' was not needed", StringComparison.Ordinal));
    }
}
