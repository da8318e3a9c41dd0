using SquadAnalytics.Reporting.Tests.Figures;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Tests;

public class ProfileTablesTests
{
    [Fact]
    public void The_profile_shows_its_contrasts_first_and_refuses_what_one_athlete_cannot_tell()
    {
        // R 4.2.2: 100 * expm1(0.0911177527 + c(-1, 1) * qt(.95, 20) * 0.00398530702) of lmer(log(y) ~ factor(set) + (1 | session)): 9.54, 8.79 to 10.30; 100 * expm1(0.0106937009) = 1.075.
        var model = ProfileModel.Fit(Examples.Sessions, new ProfileModelOptions(3) { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var table = Tables.Profile(model, new NumberFormat(1));
        Assert.Equal(["sets 4-5 minus sets 1-3", "9.5 %", "8.8 to 10.3 %", "20.0", "< .001"], table.Rows[0].Select(cell => cell.Text));
        Assert.True(table.Rows[6][1].IsRefusal);
        Assert.Equal("1.08 %", table.Rows[^1][1].Text);
    }

    [Fact]
    public void Athletes_stand_in_the_order_of_the_squad_with_their_refusal()
    {
        var model = ProfileModel.Fit(Examples.Sessions, new ProfileModelOptions(3) { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var squad = new Squad("One (invented)", [new Athlete("a", "Boxer A", "A1")], [Examples.Protocol], Examples.Sessions);
        var row = Assert.Single(Tables.LateEffects(model, squad, new NumberFormat(1)).Rows);
        Assert.Equal(["Boxer A", "6", "not estimable: needs 6 athletes with 4 eligible sessions, has 1 athletes with 4 eligible sessions"], row.Take(3).Select(cell => cell.Text));
    }
}
