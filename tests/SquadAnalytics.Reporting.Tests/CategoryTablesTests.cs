using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Tests;

public class CategoryTablesTests
{
    [Fact]
    public void Categories_show_names_and_what_is_not_known_but_no_body_mass()
    {
        var date = new DateOnly(2031, 3, 4);
        var squad = new Squad("Two (invented)", [new Athlete("a", "Ada", "A1") { BirthYear = 2014, Sex = Sex.Female }, new Athlete("b", "Bo", "B1")], [], [])
        {
            AgeGroups = [new AgeGroup("Harbour (invented)", "youth", new DateOnly(2030, 1, 1), 15, 18)],
            WeightClasses = [new WeightClass("Harbour (invented)", "middle", new DateOnly(2030, 1, 1), 57, 60)],
            Contexts = [new DayContext("a", date) { BodyMassKilograms = 58.3 }],
        };
        var table = Tables.Categories(Categories.Of(squad, date), squad);
        Assert.Equal(["Ada", "youth", "female", "middle", "–"], table.Rows[0].Select(cell => cell.Text));
        Assert.Equal("age group: the year of birth is not written down; sex: not entered; weight class: no body mass is written down in the 14 days before", table.Rows[1][4].Text);
        Assert.DoesNotContain("58.3", table.ToText(), StringComparison.Ordinal);
    }
}
