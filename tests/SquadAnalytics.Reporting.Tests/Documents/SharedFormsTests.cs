using System.Xml.Linq;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.Reporting.Tests.Figures;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class SharedFormsTests
{
    private static readonly Athlete Junior = new("j1", "Iva Smaland", "IS") { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] };

    private static readonly Discretion Discretion = Discretion.Of(new Squad("x", [Junior], [], []), [new HealthNote("h", "j1", new DateOnly(2031, 1, 1), "Dizzy in set 4, seen by the doctor")], new DateOnly(2031, 3, 4));

    private static Table Groups(params int[] athletes) => new(
        "Totals by group",
        [new("group"), TableColumn.Figures("mean total", "s")],
        [.. athletes.Select((count, k) => (IReadOnlyList<TableCell>)[$"group {k + 1}", TableCell.Figure(300 + k, 1).OfGroup(count)])]);

    private static IReadOnlyList<string> Shown(Table table) => [.. SharedForms.Of(table, Discretion)!.Rows.Select(row => row[1].Text)];

    [Fact]
    public void A_small_group_is_withheld_and_so_is_the_one_that_would_give_it_away_by_subtraction()
    {
        // UNECE/Eurostat 2005, Glossary of statistical disclosure control: primary and secondary suppression; k = 5.
        Assert.Equal([SharedForms.SmallGroup, "301.0", SharedForms.SmallGroup], Shown(Groups(3, 9, 6)));
        Assert.Equal(["300.0", "301.0"], Shown(Groups(5, 9)));
        Assert.Equal([SharedForms.SmallGroup, SharedForms.SmallGroup, "302.0"], Shown(Groups(3, 4, 9)));
    }

    [Fact]
    public void The_whole_beside_its_parts_stays_and_is_no_part()
    {
        Assert.Equal([SharedForms.SmallGroup, SharedForms.SmallGroup, "302.0"], Shown(Groups(3, 9, 12)));
        Assert.Equal([SharedForms.SmallGroup, SharedForms.SmallGroup, SharedForms.SmallGroup], Shown(Groups(1, 2, 3)));
    }

    [Fact]
    public void A_withheld_figure_is_in_no_form_of_the_table()
    {
        var shared = SharedForms.Of(Groups(3, 9, 6), Discretion)!;
        foreach (var form in (string[])[shared.ToHtml(), shared.ToCsv(), shared.ToText(), shared.ToJson()])
        {
            Assert.DoesNotContain("300", form, StringComparison.Ordinal);
            Assert.Contains("301", form, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Rows_and_columns_of_body_mass_go_and_names_become_codes()
    {
        var table = new Table("Iva Smaland's day", [new("measure"), TableColumn.Figures("this test"), TableColumn.Figures("body_mass_kg")], [["sleep", TableCell.Figure(8, 1), TableCell.Figure(63.1, 1)], ["body mass", TableCell.Figure(63.1, 1), TableCell.Nothing], ["Iva Smaland", TableCell.Figure(2, 1), TableCell.Nothing]])
        {
            Notes = ["Dizzy in set 4, seen by the doctor."],
        };
        Assert.Equal("IS's day\nmeasure  this test\n-------  ---------\nsleep          8.0\nIS             2.0\nNote: (health entry withheld)\n", SharedForms.Of(table, Discretion)!.ToText());
        Assert.Null(SharedForms.Of(new Table("x", [TableColumn.Figures("body mass", "kg")], [[TableCell.Figure(63.1, 1)]]), Discretion));
    }

    [Fact]
    public void A_table_comes_back_from_its_json_as_it_was()
    {
        var table = Groups(3, 9) with { Notes = ["a <note>"] };
        var refused = new Table("r", [new("a"), TableColumn.Figures("b", "s")], [["=1", TableCell.Refused(new NotEstimable("x", Refusal.TooFewSets, 3, 1, "sets"))], ["b", TableCell.Nothing]]);
        Assert.Equal(table.ToHtml(), Table.FromJson(table.ToJson())!.ToHtml());
        Assert.Equal(table.ToJson(), Table.FromJson(table.ToJson())!.ToJson());
        Assert.Equal(refused.ToHtml() + refused.ToCsv(), Table.FromJson(refused.ToJson())!.ToHtml() + Table.FromJson(refused.ToJson())!.ToCsv());
        foreach (var nonsense in (string[])["", "[]", "null", "{\"caption\":\"c\",\"columns\":[],\"rows\":[]}", "{\"caption\":\"c\",\"columns\":[{\"header\":\"a\"}],\"rows\":[[]]}"]) Assert.Null(Table.FromJson(nonsense));
    }

    [Theory]
    [InlineData("<p>Iva Smaland</p>", "<p>IS</p>")]
    [InlineData("<p title=\"Iva Smaland\">x</p>", "<p title=\"IS\">x</p>")]
    [InlineData("<p>Seen: dizzy in set 4, seen by the doctor.</p><p>Rest</p>", "<p>(health entry withheld)</p><p>Rest</p>")]
    [InlineData("<table><tr><th>athlete</th><th>Body mass (kg)</th></tr><tr><td>IS</td><td>63.1</td></tr><tr><td>body mass</td><td>1</td></tr></table>", "<table><tr><th>athlete</th></tr><tr><td>IS</td></tr></table>")]
    [InlineData("<p>Iva <b>Smaland</b></p>", null)]
    [InlineData("<p>Iva</p><p>Smaland</p>", null)]
    [InlineData("<p>I<b>va</b> Sma<i>land</i></p>", null)]
    [InlineData("<p>Dizzy in <b>set 4</b>, seen by the doctor</p>", null)]
    [InlineData("<p>plain<br/><div class=\"wide\"></div></p>", "<p>plain<br/><div class=\"wide\"></div></p>")]
    public void Html_is_mended_text_by_text_or_left_out(string html, string? shared) => Assert.Equal(shared, SharedForms.OfHtml(html, Discretion));

    [Fact]
    public void A_drawing_stays_a_drawing_that_stands_alone()
    {
        var before = XDocument.Parse(Examples.Paced().ToSvg());
        var after = XDocument.Parse(SharedForms.OfSvg(Examples.Paced().ToSvg(), Discretion)!);
        Assert.Equal(before.Root!.Name, after.Root!.Name);
        Assert.Equal(before.Descendants().Count(), after.Descendants().Count());
        Assert.Equal(before.Descendants().SelectMany(element => element.Attributes()).Count(attribute => attribute.Name != "data-athletes"), after.Descendants().SelectMany(element => element.Attributes()).Count());
    }
    [Fact]
    public void What_rests_as_a_whole_on_too_few_athletes_is_withheld_as_a_whole()
    {
        var table = new Table("Blocks", [new("measure"), TableColumn.Figures("estimate")], [["mean", TableCell.Figure(12.3, 1)]]) { Notes = ["mean 12.3"], OverAthletes = 4 };
        var shared = SharedForms.Of(Table.FromJson(table.ToJson())!, Discretion)!;
        Assert.Equal(SharedForms.SmallGroup, shared.Rows[0][1].Text);
        Assert.DoesNotContain("12.3", shared.ToText() + shared.ToCsv() + shared.ToHtml() + shared.ToJson(), StringComparison.Ordinal);
        Assert.Contains("12.3", SharedForms.Of(table with { OverAthletes = 5 }, Discretion)!.ToText(), StringComparison.Ordinal);
        Assert.Equal("A finding over fewer than 5 athletes is withheld here.", SharedForms.Of(new Finding("The mean was 12.3 s.") { OverAthletes = 4, Notes = ["12.3"] }, Discretion).ToString());
        Assert.Equal("The mean was 12.3 s.", SharedForms.Of(new Finding("The mean was 12.3 s.") { OverAthletes = 5 }, Discretion).ToString());
    }

    [Fact]
    public void A_figure_says_on_its_drawing_over_how_many_athletes_it_is()
    {
        var median = Examples.Paced().SquadMedian.Count > 0 ? Examples.Paced().SquadMedian : [.. Examples.Paced().Session.Sets.Select(set => set.Work!.Value)];
        HowWasItPaced Of(int? athletes) => Examples.Paced() with { SquadMedian = median, OverAthletes = athletes };
        Assert.True(SharedForms.IsSmallGroup(Of(4).ToSvg()));
        Assert.True(SharedForms.IsSmallGroup(Of(null).ToSvg()));
        Assert.False(SharedForms.IsSmallGroup(Of(5).ToSvg()));
        Assert.False(SharedForms.IsSmallGroup((Of(null) with { SquadMedian = [] }).ToSvg()));
    }
}
