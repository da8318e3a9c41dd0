using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public class DiscretionTests
{
    private static readonly DateOnly Day = new(2031, 3, 4);

    private static readonly Athlete Junior = new("j1", "Íva Småland", "IS") { Aliases = ["Smaland Iva"], Groups = [new GroupMembership("Juniors", new DateOnly(2030, 1, 1))], Consents = [new Consent("named in reports", new DateOnly(2030, 1, 1), GivenBy: "guardian")] };

    private static readonly Athlete Silent = new("s1", "Otto Quell", "OQ");

    private static readonly Athlete Open = new("o1", "Bea Vanth", "BV") { Consents = [new Consent("Named in reports", new DateOnly(2030, 1, 1))] };

    private static readonly Athlete Withdrawn = new("w1", "Cy Torrin", "CT") { Consents = [new Consent("named in reports", new DateOnly(2030, 1, 1), new DateOnly(2030, 12, 31))] };

    private static Discretion Given(params string[] notes) =>
        Discretion.Of(new Squad("x", [Junior, Silent, Open, Withdrawn], [], []), [.. notes.Select((text, k) => new HealthNote($"h{k}", "o1", Day, text))], Day);

    [Theory]
    [InlineData("Íva Småland was faster.", "IS was faster.")]
    [InlineData("SMÅLAND,  íva", "IS")]
    [InlineData("Smaland, Iva", "IS")]
    [InlineData("iva smaland", "IS")]
    [InlineData("Otto Quell and Bea Vanth", "OQ and Bea Vanth")]
    [InlineData("Cy Torrin's total", "CT's total")]
    [InlineData("IS and OQ and 62.4 s", "IS and OQ and 62.4 s")]
    [InlineData("", "")]
    public void Names_without_consent_and_of_juniors_become_codes_however_they_are_written(string text, string shared) =>
        Assert.Equal(shared, Given().Apply(text));

    [Fact]
    public void A_test_later_than_today_decides_who_is_a_junior()
    {
        // Practice data may lie in the future: the juniors of its last test are its juniors.
        var grown = Open with { Groups = [new GroupMembership("juniors", new DateOnly(2030, 9, 1))] };
        var protocol = new Protocol("p", "p", [], 4, new Seconds(100));
        var squad = new Squad("x", [grown], [protocol], [Session.FromTimes("t", "o1", Day, protocol, 50, 50, 50, 50)]);
        Assert.Equal("BV", Discretion.Of(squad, [], new DateOnly(2026, 1, 1)).Apply("Bea Vanth"));
    }

    [Theory]
    [InlineData("Dizzy in set 4; seen by the doctor.")]
    [InlineData("Note: dizzy in   set 4, seen by the DOCTOR, told on Monday")]
    [InlineData("Body mass 63.1 on 2031-03-04")]
    [InlineData("DayContext { BodyMassKilograms = 63.1 }")]
    [InlineData("Knee. Head knock on 2031-03-01, not cleared.")]
    [InlineData("cleared_date: 2031-03-09")]
    [InlineData("flu")]
    public void A_text_that_holds_a_health_entry_is_withheld_as_a_whole(string text)
    {
        var discretion = Given("Dizzy in set 4, seen by the doctor", "flu");
        Assert.True(discretion.Concerns(text));
        Assert.Equal(Discretion.Withheld, discretion.Apply(text));
    }

    [Theory]
    [InlineData("After a head knock: no test until cleared by a clinician.")]
    [InlineData("the influence of 3 sets")]
    [InlineData("Read a slow total beside the body mass.")]
    public void Words_on_health_in_general_stay(string text) => Assert.Equal(text, Given("flu").Apply(text));

    [Fact]
    public void Of_a_sentence_on_several_things_only_the_clause_on_body_mass_goes() =>
        Assert.Equal("Sleep 8.5 h (usual 8.0), (health entry withheld) and load 3.", Given().Apply("Sleep 8.5 h (usual 8.0), body mass 63.1 kg (usual 64.0) and load 3."));

    [Fact]
    public void A_name_or_note_broken_over_lines_is_found()
    {
        var discretion = Given("Dizzy in set 4, seen by the doctor");
        Assert.Equal("IS", discretion.ApplyToLines("Íva\nSmåland"));
        Assert.Equal(Discretion.Withheld, discretion.ApplyToLines("Dizzy in set four\nDizzy in set 4,\nseen by the doctor"));
        Assert.Equal("one\nIS two", discretion.ApplyToLines("one\r\nÍva Småland two"));
    }

    [Fact]
    public void The_athletes_whom_a_text_shows_are_known_by_code_too() =>
        Assert.Equal(["j1", "o1"], Given().AthletesIn("IS 62.4 s; Vanth, Bea 61.0 s"));
}
