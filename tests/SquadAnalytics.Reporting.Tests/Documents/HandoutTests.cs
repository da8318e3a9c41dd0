using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class HandoutTests
{
    private static readonly Protocol Quay = new("quay", "Quay circuit", [new Station("burpees", 8)], 4, new Seconds(120)) { Bands = [new PerformanceBand("Harbour", new Seconds(200), new Seconds(240))] };

    /// <summary>Boxers whose totals all lie near 220 s plus ten times their number, seven tests each; the first is a junior.</summary>
    private static Squad Squad(int boxers, double lastChange = 0) => new(
        "Quay",
        [.. Enumerable.Range(0, boxers).Select(k => new Athlete($"a{k}", $"Name{k} Surname{k}", $"C{k}") { Groups = k == 0 ? [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] : [] })],
        [Quay],
        [
            .. Enumerable.Range(0, boxers).SelectMany(k => Enumerable.Range(0, 8).Select(week =>
            {
                var set = 55 + (2.5 * k) + (0.1 * ((week * (k + 3)) % 5)) + (week == 7 && k == 0 ? lastChange / 4 : 0);
                return Session.FromTimes($"s{k}-{week}", $"a{k}", new DateOnly(2031, 1, 6).AddDays(7 * week), Quay, set, set + 1, set + 2, set + 0.5);
            })),
        ])
    {
        Events = [new AthleteEvent("e", "a0", new DateOnly(2031, 2, 1), EventKind.HeadKnock)],
        Contexts = [new DayContext("a0", new DateOnly(2031, 2, 24)) { BodyMassKilograms = 63.17 }],
    };

    private static string Page(Squad squad, string athlete = "a0", HandoutOptions? options = null) => Handout.Of(squad, athlete, options).GetOrThrow().ToHtml();

    [Fact]
    public void A_junior_is_shown_by_code_and_nobody_else_at_all()
    {
        var page = Page(Squad(6));
        Assert.Contains("<h1>C0: Quay circuit</h1>", page, StringComparison.Ordinal);
        for (var k = 0; k < 6; k++) Assert.DoesNotContain($"Surname{k}", page, StringComparison.Ordinal);
        for (var k = 1; k < 6; k++) Assert.DoesNotContain($">C{k}", page, StringComparison.Ordinal);
        Assert.DoesNotContain("squad", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("<h1>Name3 Surname3: Quay circuit</h1>", Page(Squad(6), "a3"), StringComparison.Ordinal);
    }

    [Fact]
    public void Other_people_s_times_do_not_reach_the_page()
    {
        // The others' tests moved by ten minutes in steps that leave their scatter as it is: not a letter changes.
        var squad = Squad(6);
        var moved = new Squad("Quay", squad.Athletes, squad.Protocols, [.. squad.Sessions.Select(session => session.AthleteId == "a0" ? session : Session.FromTimes(session.Id, session.AthleteId, session.Date, Quay, [.. session.TimesSeconds.Select(time => time + 16)]))]) { Events = squad.Events };
        Assert.Equal(Page(squad), Page(moved));
    }

    [Fact]
    public void Health_entries_are_on_no_handout()
    {
        var page = Page(Squad(6));
        Assert.DoesNotContain("63.17", page, StringComparison.Ordinal);
        Assert.DoesNotContain("2031-02-01", page, StringComparison.Ordinal);
        Assert.DoesNotContain("1 February", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-30, "Yes: faster")]
    [InlineData(30, "Yes: slower")]
    [InlineData(1, "No: about the same")]
    public void Whether_it_is_a_change_is_said_in_plain_words(double change, string words) => Assert.Contains(words, Page(Squad(6, change)), StringComparison.Ordinal);

    [Fact]
    public void Where_fewer_than_five_stand_behind_the_noise_nothing_of_theirs_is_used()
    {
        var page = Page(Squad(4));
        Assert.Contains("too few boxers have done this test", page, StringComparison.Ordinal);
        Assert.DoesNotContain("strays by about", page, StringComparison.Ordinal);
    }

    [Fact]
    public void One_test_is_enough_for_a_page_and_none_is_a_refusal()
    {
        var squad = Squad(6);
        var newcomer = new Squad("Quay", [.. squad.Athletes, new Athlete("n", "New Person", "NP"), new Athlete("z", "Zero Person", "ZP")], squad.Protocols, [.. squad.Sessions, Session.FromTimes("n1", "n", new DateOnly(2031, 3, 1), Quay, 60, 61, 62, 63)]);
        Assert.Contains("This was the first complete test.", Page(newcomer, "n"), StringComparison.Ordinal);
        Assert.Contains("That cannot be told yet", Page(newcomer, "n"), StringComparison.Ordinal);
        Assert.Equal(Refusal.TooFewSessions, Handout.Of(newcomer, "z").Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => Handout.Of(newcomer, "nobody"));
    }

    [Fact]
    public void Names_are_text()
    {
        var squad = Squad(6);
        var marked = new Squad("Quay <b>", [.. squad.Athletes, new Athlete("n", "<script>x</script>", "NP")], squad.Protocols, [.. squad.Sessions, Session.FromTimes("n1", "n", new DateOnly(2031, 3, 1), Quay, 60, 61, 62, 63)]);
        var page = Page(marked, "n");
        Assert.Contains("&lt;script&gt;x", page, StringComparison.Ordinal);
        foreach (var markup in (string[])["<script", "<b>"]) Assert.DoesNotContain(markup, page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_cautions_come_along_and_the_page_stands_alone()
    {
        var page = Page(Squad(6));
        foreach (var caution in (Caution[])[Cautions.Stop, Cautions.HeadKnock, Cautions.Judgement, Cautions.Juniors]) Assert.Contains($"<dt>{caution.Topic}</dt>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<dt>Juniors</dt>", Page(Squad(6), "a3"), StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        foreach (var trace in (string[])["<script", "https://", "<link", "<img"]) Assert.DoesNotContain(trace, page, StringComparison.OrdinalIgnoreCase);
    }
}
