using SquadAnalytics.Change;
using SquadAnalytics.Reporting.Questions;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests;

public class SeasonReviewTablesTests
{
    [Fact]
    public void Sessions_left_out_and_analysed_add_up_to_those_in_the_logbook()
    {
        var sessions = Examples.Squad().Sessions.Select((session, k) => k == 0 ? session with { VoidReason = "alarm" } : session).ToList();
        var selection = SessionSelection.Of(sessions, new SelectionOptions { To = new DateOnly(2031, 3, 20) }).GetOrThrow();
        var counts = Tables.Exclusions(selection, sessions).Rows.Select(row => int.Parse(row[1].Text, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(counts[0], counts.Skip(1).Sum());
        // By hand: 33 sessions, one void; of the 9 athletes' first remaining sessions 9 dropped; the last week's 9 are later, one of them a first session.
        Assert.Equal([33, 1, 0, 0, 9, 8, 0, 15], counts);
        Assert.Equal("alarm", Tables.Exclusions(selection, sessions).Rows[1][2].Text);
    }

    [Fact]
    public void Few_juniors_are_not_counted_out()
    {
        var squad = Examples.Squad();
        var mixed = new Squad("Invented", [.. squad.Athletes.Select((athlete, k) => k < 2 ? athlete with { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] } : athlete)], squad.Protocols, squad.Sessions);
        var table = Tables.Participants(SessionSelection.Of(mixed.Sessions, SelectionOptions.KeepAll).GetOrThrow(), mixed);
        Assert.Equal("fewer than 5", table.Rows.Single(row => row[0].Text == "juniors")[1].Text);
        Assert.Equal("9", table.Rows[0][1].Text);
    }

    [Fact]
    public void The_R_code_names_what_was_chosen_and_the_model_that_was_kept()
    {
        var season = SquadTrend.Fit(Examples.Squad().Sessions, new SquadTrendOptions { Selection = new SelectionOptions { Familiarisation = 0, To = new DateOnly(2031, 3, 30) } }).GetOrThrow();
        var code = SeasonMethods.InR(season, "w").Code;
        Assert.Contains("d$protocol == \"w\"", code, StringComparison.Ordinal);
        Assert.Contains("as.Date(\"2031-03-30\")", code, StringComparison.Ordinal);
        Assert.Contains("FUN = seq_along) > 0, ]", code, StringComparison.Ordinal);
        Assert.Contains(season.Form == SquadTrendForm.LevelsOnly ? "(1 | athlete)" : season.Form == SquadTrendForm.LevelsAndSlopes ? "(week || athlete)" : "(week | athlete)", code, StringComparison.Ordinal);
        Assert.DoesNotContain("<", new Listing("R", "a < b").ToHtml()["<pre><code>".Length..].Replace("</code></pre>", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
