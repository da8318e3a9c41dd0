using SquadAnalytics.Import;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

public sealed class ShapeTests
{
    [Fact]
    public void One_row_per_session_becomes_one_session_each()
    {
        var result = Read("""
            Athlete;Date;Protocol;Set 1;Set 2;Set 3;Set 4;Total
            Bo Lindqvist;2031-03-04;Quay circuit;62.4;1:03.1;64;69.25;4:18.75
            Zoë Brandér;2031-03-04;Quay circuit;70;71;DNF;;DNF
            """, Known);
        Assert.Equal(2, result.Report.Kept);
        Assert.Equal([62.4, 63.1, 64, 69.25], Times(result.NewSessions[0]));
        Assert.Equal(0.01, result.NewSessions[0].TimingResolution!.Value.Value);
        Assert.Equal("a1", result.NewSessions[0].AthleteId);
        Assert.Equal(Date, result.NewSessions[0].Date);
        Assert.Same(Quay, result.NewSessions[0].Protocol);
        Assert.Equal([SetStatus.Timed, SetStatus.Timed, SetStatus.NotFinished, SetStatus.NotRecorded], result.NewSessions[1].Sets.Select(set => set.Status));
    }

    [Fact]
    public void One_row_per_set_becomes_sessions_with_their_sets_in_order()
    {
        var result = Read("""
            athlete,date,protocol,set,seconds
            BL,2031-03-04,quay-v1,2,63.1
            BL,2031-03-04,quay-v1,1,62.4
            ZB,2031-03-04,quay-v1,1,70
            BL,2031-03-04,quay-v1,Set 4,DNF
            """, Known);
        Assert.Equal(4, result.Report.Kept);
        Assert.Equal(2, result.NewSessions.Count);
        Assert.Equal([62.4, 63.1, null, null], Times(result.NewSessions[0]));
        Assert.Equal(SetStatus.NotFinished, result.NewSessions[0].Sets[3].Status);
    }

    [Fact]
    public void Blocks_take_date_and_protocol_from_their_titles()
    {
        var result = Read("""
            Harbour Lights ABC (invented)
            Tuesday 4 March 2031 - Quay circuit

            Name,1,2,3,4
            Bo Lindqvist,62,63,64,69
            Zoë Brandér,70,71,72,73

            Quay circuit juniors,11 March 2031
            Name,1,2,3,4
            Zoë Brandér,68,69,70,71
            """, Known);
        Assert.Equal((3, 3), (result.Report.Rows, result.Report.Kept));
        Assert.Equal(["2031-03-04 quay-v1", "2031-03-04 quay-v1", "2031-03-11 quay-v1-j"], result.NewSessions.Select(session => $"{session.Date:yyyy-MM-dd} {session.Protocol.Id}"));
    }

    [Fact]
    public void Rows_below_a_second_title_keep_the_columns_but_take_the_new_date()
    {
        var result = Read("""
            Quay circuit, 4 March 2031
            Name;1;2;3;4
            Bo Lindqvist;62;63;64;69
            11 March 2031, Quay circuit
            Bo Lindqvist;61;62;63;68
            """, Known);
        Assert.Equal((2, 2), (result.Report.Rows, result.Report.Kept));
        Assert.Equal([Date, new DateOnly(2031, 3, 11)], result.NewSessions.Select(session => session.Date));
    }

    [Fact]
    public void A_line_of_averages_is_asked_about_even_without_a_squad()
    {
        var result = Read("Name;Date;1;2\nAda;2031-03-04;62;63\nAverage;2031-03-04;62;63\n");
        Assert.Equal("name:Average", Assert.Single(result.Decisions).Id);
    }

    [Fact]
    public void Two_files_of_one_name_cannot_be_told_apart_and_an_empty_file_says_so()
    {
        Assert.Throws<ArgumentException>(() => ClipboardImport.Read([ImportSource.FromText("a/x.csv", ""), ImportSource.FromText("b/x.csv", "")]));
        Assert.Contains(Read("").Report.Notes, note => note.Contains("no row of times", StringComparison.Ordinal));
    }

    [Fact]
    public void Wide_stations_add_up_to_the_set()
    {
        var result = Read("""
            Name,Date,Protocol,Set 1 station 1,Set 1 station 2,Set 1 station 3,S2 burpees,S2 squats,S2 planks
            Bo Lindqvist,2031-03-04,Quay circuit,22.1,18.2,20.1,23,19.5,DNF
            """, Known);
        Assert.Equal(1, result.Report.Kept);
        var session = Assert.Single(result.NewSessions);
        Assert.Equal(60.4, session.Sets[0].Work!.Value.Value);
        Assert.Equal(SetStatus.NotFinished, session.Sets[1].Status);
        Assert.Equal([22.1, 18.2, 20.1, 23, 19.5, null], session.Stations.Select(station => station.Work?.Value));
        Assert.Equal([1, 2, 3, 1, 2, 3], session.Stations.Select(station => station.Station));
    }

    [Fact]
    public void Long_stations_are_told_from_sets_by_their_column()
    {
        var result = Read("""
            athlete	date	protocol	set	station	time
            BL	2031-03-04	quay-v1	1		60.4
            BL	2031-03-04	quay-v1	1	squats	18.2
            BL	2031-03-04	quay-v1	1	burpees	22.1
            BL	2031-03-04	quay-v1	1	3	20.1
            """, Known);
        Assert.Equal(4, result.Report.Kept);
        Assert.Equal([22.1, 18.2, 20.1], result.NewSessions[0].Stations.Select(station => station.Work!.Value.Value));
        Assert.Equal(60.4, result.NewSessions[0].Sets[0].Work!.Value.Value);
    }

    [Fact]
    public void Without_a_squad_names_and_number_of_sets_are_taken_as_they_stand()
    {
        var result = Read("""
            Athlete,Date,Set 1,Set 2,Set 3
            Ada Novák,2031-03-04,62,63,64
            Ben Ødegård,2031-03-04,66,65,
            """);
        Assert.Equal(2, result.Report.Kept);
        Assert.Equal(["AN", "BO"], result.NewAthletes.Select(athlete => athlete.Code));
        Assert.Equal(3, Assert.Single(result.NewProtocols).Sets);
        Assert.Null(result.NewProtocols[0].StartInterval);
    }

    [Fact]
    public void A_name_without_times_is_read_and_adds_nothing()
    {
        var result = Read("""
            Name,Date,Protocol,Set 1,Set 2,Set 3,Set 4
            Bo Lindqvist,2031-03-04,Quay circuit,,,,
            Zoë Brandér,2031-03-04,Quay circuit,DNS,,,
            """, Known);
        Assert.Equal(2, result.Report.Kept);
        var session = Assert.Single(result.NewSessions);
        Assert.All(session.Sets, set => Assert.Equal(SetStatus.NotStarted, set.Status));
        Assert.Contains(result.Report.Notes, note => note.Contains("nothing was added: 1", StringComparison.Ordinal));
    }

    [Fact]
    public void Columns_without_a_header_are_asked_about()
    {
        const string text = "Bo Lindqvist;62;63;64;65\nZoë Brandér;70;71;72;73\n";
        var options = Known with { Date = Date, Protocol = "quay-v1" };
        var asked = Read(text, options);
        var decision = Assert.Single(asked.Decisions);
        Assert.Equal(DecisionKind.Columns, decision.Kind);
        Assert.Equal(2, asked.Report.DecisionRows);
        Assert.Equal(2, Read(text, options.Answering(decision.Id, "athlete, then sets")).NewSessions.Count);
        Assert.Equal(2, Read(text, options.Answering(decision.Id, "leave out")).Report.RefusedRows);
    }

    [Fact]
    public void Rows_with_no_columns_named_are_refused_and_not_swallowed()
    {
        var result = Read("Nmae,Zet1\nBo,x,y\nZoë,62,z\n", Known);
        Assert.Equal(3, result.Report.Rows);
        Assert.Equal(3, result.Report.RefusedRows);
        Assert.Contains("no line above names the columns", result.Report.Refused[0].Problems[0].Reason, StringComparison.Ordinal);
    }
}
