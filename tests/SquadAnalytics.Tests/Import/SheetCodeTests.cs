using SquadAnalytics.Import;

namespace SquadAnalytics.Tests.Import;

public class SheetCodeTests
{
    private const string Alphabet = "23456789ABCDEFGHJKMNPQRTVWXYZ";

    private static readonly Protocol Quay = new("quay-v1", "Quay circuit", [new Station("burpees", 8)], 3, new Seconds(120));

    private static readonly Protocol Other = new("other", "Other circuit", [], 3, new Seconds(90));

    private static readonly Squad Members = new("Quay", [new Athlete("a1", "Bo Lindqvist", "BL"), new Athlete("a2", "Zoë Brandér", "ZB")], [Quay, Other], []);

    private static readonly string Code = SheetCode.Of(Quay, new DateOnly(2031, 4, 3)).ToString();

    private static ImportResult Read(string text) => ClipboardImport.Read(ImportSource.FromText("evening.csv", text), new ImportOptions { Squad = Members });

    [Theory]
    [InlineData(2000, 1, 1)]
    [InlineData(2031, 4, 3)]
    [InlineData(2089, 9, 17)]
    public void A_code_says_date_and_protocol_however_it_is_typed(int year, int month, int day)
    {
        var date = new DateOnly(year, month, day);
        var code = SheetCode.Of(Quay, date).ToString();
        Assert.Matches("^[2-9A-Z]{3}-[2-9A-Z]{3}-[2-9A-Z]{3}$", code);
        foreach (var typed in (string[])[code, code.ToLowerInvariant(), code.Replace("-", "", StringComparison.Ordinal), code.Replace('-', ' ')])
        {
            var read = SheetCode.Parse(typed);
            Assert.Equal(date, read!.Date);
            Assert.True(read.IsFor(Quay));
            Assert.False(read.IsFor(Other));
            Assert.False(read.IsFor(new Protocol("quay-v1", "Quay circuit", [new Station("burpees", 9)], 3, new Seconds(120))));
        }
    }

    [Fact]
    public void Every_wrong_character_and_every_swap_of_two_is_noticed()
    {
        // All of them: with a prime number of characters and weights 1 to 8 and -1 none is left over (the argument of ISBN-10, ISO 2108).
        var signs = Code.Replace("-", "", StringComparison.Ordinal);
        for (var k = 0; k < signs.Length; k++)
        {
            foreach (var sign in Alphabet.Where(sign => sign != signs[k])) Assert.Null(SheetCode.Parse(signs[..k] + sign + signs[(k + 1)..]));
            for (var other = k + 1; other < signs.Length; other++)
            {
                var swapped = signs.ToCharArray();
                (swapped[k], swapped[other]) = (swapped[other], swapped[k]);
                if (signs[k] != signs[other]) Assert.Null(SheetCode.Parse(new string(swapped)));
            }
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("222-222")]
    [InlineData("OIL-SU0-111")]
    [InlineData("ZZZ-ZZZ-ZZZZ")]
    public void What_is_no_code_is_none(string text) => Assert.Null(SheetCode.Parse(text));

    [Fact]
    public void A_file_with_the_sheet_s_code_needs_no_decision()
    {
        var result = Read($"Sheet {Code}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\nZoë Brandér,60,61,62\n");
        Assert.Empty(result.Decisions);
        Assert.Equal([new DateOnly(2031, 4, 3)], result.NewSessions.Select(session => session.Date).Distinct());
        Assert.Equal(["quay-v1", "quay-v1"], result.NewSessions.Select(session => session.Protocol.Id));
    }

    [Theory]
    [InlineData("Quay circuit, 03/04/2031, sheet CODE")]
    [InlineData("Quay circuit 4/3/31 code: CODE")]
    [InlineData("CODE,Quay circuit,03.04.2031")]
    public void The_code_settles_in_which_order_a_date_is_written(string title)
    {
        var result = Read($"{title.Replace("CODE", Code, StringComparison.Ordinal)}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\n");
        Assert.Empty(result.Decisions);
        Assert.Equal(new DateOnly(2031, 4, 3), Assert.Single(result.NewSessions).Date);
    }

    [Fact]
    public void A_further_heat_under_a_title_of_its_own_belongs_to_the_same_sheet()
    {
        var result = Read($"sheet {Code}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\n\nheat two\nname,set 1,set 2,set 3\nZB,60,61,62\n");
        Assert.Empty(result.Decisions);
        Assert.Equal(2, result.NewSessions.Count);
    }

    [Fact]
    public void A_title_that_contradicts_the_code_becomes_a_decision()
    {
        var date = Read($"Quay circuit, 5 April 2031, sheet {Code}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\n");
        var decision = Assert.Single(date.Decisions);
        Assert.Equal(DecisionKind.Date, decision.Kind);
        Assert.Contains("the sheet's code 2031-04-03", decision.Text, StringComparison.Ordinal);
        Assert.Equal((1, 0), (date.Report.DecisionRows, date.Report.Kept));

        var protocol = Read($"Other circuit, 3 April 2031, sheet {Code}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\n");
        Assert.Equal(DecisionKind.Protocol, Assert.Single(protocol.Decisions).Kind);
    }

    [Fact]
    public void A_code_copied_wrongly_or_of_another_squad_is_told_and_says_nothing()
    {
        var wrong = Read($"sheet {Code[..^1]}{(Code[^1] == '2' ? '3' : '2')}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\n");
        Assert.Contains(wrong.Report.Notes, note => note.Contains("copied wrongly", StringComparison.Ordinal));
        Assert.Equal([DecisionKind.Date, DecisionKind.Protocol], wrong.Decisions.Select(decision => decision.Kind).Order());

        var stranger = SheetCode.Of(new Protocol("x", "x", [], 3, null), new DateOnly(2031, 4, 3));
        var foreign = Read($"sheet {stranger}\nname,set 1,set 2,set 3\nBL,62.4,63.1,64\n");
        Assert.Contains(foreign.Report.Notes, note => note.Contains("a protocol that the squad does not have", StringComparison.Ordinal));
        Assert.Equal(DecisionKind.Protocol, Assert.Single(foreign.Decisions).Kind);
    }
}
