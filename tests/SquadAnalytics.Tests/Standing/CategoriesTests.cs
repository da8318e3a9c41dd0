using CsCheck;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Standing;

/// <summary>Invented tables of an invented federation; expected rows by hand.</summary>
public sealed class CategoriesTests
{
    private static readonly DateOnly Early = new(2030, 1, 1), Revised = new(2031, 3, 1), Test = new(2031, 3, 4);

    [Fact]
    public void Categories_are_looked_up_for_the_test_date()
    {
        // Born 2014: 17 in 2031. 60.0 kg on the day: above 57 up to 60 since 2031-03-01; above 56 up to 63 before.
        var row = Categories.Of(Squad(), Test)[0];
        Assert.Equal("a: youth, Female, middle", row.ToString());
        Assert.Equal(Test, row.BodyMassOn);
        Assert.Empty(row.Unknown);
        Assert.Equal("old middle", Categories.Of(Squad(), Revised.AddDays(-1))[0].WeightClass!.Name);
    }

    [Fact]
    public void A_mass_on_the_upper_limit_belongs_to_the_class_and_on_the_lower_to_the_one_below()
    {
        Assert.Equal("middle", Categories.Of(Squad(60), Test)[0].WeightClass!.Name);
        Assert.Equal("heavy", Categories.Of(Squad(60.1), Test)[0].WeightClass!.Name);
        Assert.Equal("light", Categories.Of(Squad(57), Test)[0].WeightClass!.Name);
    }

    [Fact]
    public void What_is_not_written_down_stays_unknown_and_says_why()
    {
        var rows = Categories.Of(Squad(), Test);
        Assert.Equal(["age group: the year of birth is not written down", "sex: not entered", "weight class: no body mass is written down in the 14 days before"], rows[1].Unknown);
        Assert.Equal("b: age group unknown, sex unknown, weight class unknown", rows[1].ToString());
        Assert.Equal(["age group: the table has none for age 9", "weight class: the table has none for this sex, age group and body mass"], rows[2].Unknown);
        var without = new Squad("None", [new Athlete("a", "Ada", "A") { BirthYear = 2014, Sex = Sex.Female }], [], []);
        Assert.Equal(["age group: no table applies on that day", "weight class: no table applies on that day"], Categories.Of(without, Test)[0].Unknown);
    }

    [Fact]
    public void A_body_mass_counts_for_two_weeks_unless_asked_otherwise()
    {
        Assert.NotNull(Categories.Of(Squad(), Test.AddDays(14))[0].WeightClass);
        Assert.Null(Categories.Of(Squad(), Test.AddDays(15))[0].WeightClass);
        Assert.NotNull(Categories.Of(Squad(), Test.AddDays(15), new CategoryOptions { BodyMassDays = 15 })[0].WeightClass);
        Assert.Throws<ArgumentOutOfRangeException>(() => new CategoryOptions { BodyMassDays = -1 });
    }

    [Fact]
    public void Several_federations_ask_which_and_overlaps_are_a_caller_mistake()
    {
        var squad = Squad();
        var two = squad with { WeightClasses = [.. squad.WeightClasses, new WeightClass("Other (invented)", "only", Early, null, 60)] };
        Assert.Contains("name one of Harbour (invented), Other (invented)", Assert.Throws<ArgumentException>(() => Categories.Of(two, Test)).Message, StringComparison.Ordinal);
        Assert.Equal("only", Categories.Of(two, Test, new CategoryOptions { Federation = "Other (invented)" })[0].WeightClass!.Name);
        Assert.Throws<ArgumentException>(() => Categories.Of(squad, Test, new CategoryOptions { Federation = "nobody" }));
        var overlapping = squad with { WeightClasses = [.. squad.WeightClasses, new WeightClass("Harbour (invented)", "between", Revised, 59, 61)] };
        Assert.Contains("Weight classes overlap", Assert.Throws<ArgumentException>(() => Categories.Of(overlapping, Test)).Message, StringComparison.Ordinal);
        var ages = squad with { AgeGroups = [.. squad.AgeGroups, new AgeGroup("Harbour (invented)", "late youth", Early, 18, 20)] };
        Assert.Contains("Age groups overlap", Assert.Throws<ArgumentException>(() => Categories.Of(ages, Test)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightClass("f", "none", Early, 60, 60));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AgeGroup("f", "none", Early, 18, 17));
    }

    [Fact]
    public void Every_mass_has_one_class_and_heavier_is_never_lighter() =>
        Gen.Select(Gen.Double[40, 120], Gen.Double[0, 20]).Sample((mass, more) =>
        {
            string[] order = ["light", "middle", "heavy"];
            int Of(double kilograms) => Array.IndexOf(order, Categories.Of(Squad(kilograms), Test)[0].WeightClass!.Name);
            Assert.InRange(Of(mass), 0, 2);
            Assert.True(Of(mass + more) >= Of(mass));
        }, iter: 100);

    private static Squad Squad(double mass = 60) => new(
        "Three (invented)",
        [new Athlete("a", "Ada", "A") { BirthYear = 2014, Sex = Sex.Female }, new Athlete("b", "Bo", "B"), new Athlete("c", "Cy", "C") { BirthYear = 2022, Sex = Sex.Male }],
        [],
        [])
    {
        AgeGroups = [new AgeGroup("Harbour (invented)", "youth", Early, 15, 18), new AgeGroup("Harbour (invented)", "adults", Early, 19, null) { Source = "invented" }],
        WeightClasses =
        [
            new WeightClass("Harbour (invented)", "old light", Early, null, 56), new WeightClass("Harbour (invented)", "old middle", Early, 56, 63), new WeightClass("Harbour (invented)", "old heavy", Early, 63, null),
            new WeightClass("Harbour (invented)", "light", Revised, null, 57) { Sex = Sex.Female, AgeGroup = "youth" }, new WeightClass("Harbour (invented)", "middle", Revised, 57, 60) { Sex = Sex.Female, AgeGroup = "youth" },
            new WeightClass("Harbour (invented)", "heavy", Revised, 60, null) { Sex = Sex.Female, AgeGroup = "youth" },
        ],
        Contexts = [new DayContext("a", Revised.AddDays(-9)) { BodyMassKilograms = 61 }, new DayContext("a", Test) { BodyMassKilograms = mass }, new DayContext("c", Test) { BodyMassKilograms = 33 }],
    };
}
