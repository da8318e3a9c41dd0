using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public sealed class CategoryTests
{
    private static readonly LogbookChange Categories = new("categories") { AgeGroups = Invented.Everything.AgeGroups, WeightClasses = Invented.Everything.WeightClasses };

    [Fact]
    public void Age_groups_and_weight_classes_come_back_as_they_were_written()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        using var logbook = Logbook.Open(temp.Logbook);
        Assert.Equal(Invented.Everything.AgeGroups, logbook.Squad.AgeGroups);
        Assert.Equal(Invented.Everything.WeightClasses, logbook.Squad.WeightClasses);
    }

    [Fact]
    public void A_change_without_categories_leaves_them_and_an_empty_table_empties_them()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        logbook.Commit(Invented.Week);
        Assert.Equal(2, logbook.Squad.WeightClasses.Count);
        logbook.Commit(new LogbookChange("no classes") { WeightClasses = [] });
        Assert.Empty(logbook.Squad.WeightClasses);
        Assert.Equal(2, logbook.Squad.AgeGroups.Count);
    }

    [Fact]
    public void Removing_a_person_leaves_the_tables()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        logbook.RemovePerson("a1");
        Assert.Equal(2, logbook.Squad.AgeGroups.Count);
        Assert.Equal(2, logbook.Squad.WeightClasses.Count);
    }

    [Fact]
    public void A_logbook_from_before_there_were_categories_opens_takes_them_up_and_lets_them_go_again()
    {
        using var temp = new TempFolder();
        Logbook.Create(temp.Logbook, "Quay Boxing (invented)").Dispose();
        foreach (var file in new[] { "age-groups.csv", "weight-classes.csv" }) File.Delete(Path.Combine(temp.Logbook, file));
        using (var logbook = Logbook.Open(temp.Logbook))
        {
            Assert.Empty(logbook.Squad.AgeGroups);
            var before = logbook.Fingerprint;
            logbook.Commit(Categories);
            Assert.NotEqual(before, logbook.Fingerprint);
            logbook.Commit(new LogbookChange("a name") { SquadName = "Quay (invented)" });
        }

        using (var again = Logbook.Open(temp.Logbook))
        {
            Assert.Equal(2, again.Squad.WeightClasses.Count);
            again.UndoLastAccept();
            again.Commit(new LogbookChange("none") { AgeGroups = [], WeightClasses = [] });
            again.UndoLastAccept();
            Assert.Equal(2, again.Squad.AgeGroups.Count);
        }
    }

    [Theory]
    [InlineData("weight-classes.csv", "unknown,,57.5,", "unknown,,heavy,", "column 6 'above_kg': 'heavy' is not a number. Accepted: a number of 0 or more with a decimal point, in kg, or nothing.")]
    [InlineData("age-groups.csv", "youth,15,18", "youth,15,14", "breaks a rule: toAge must be 15 or more, but was 14.")]
    public void A_row_that_cannot_be_read_is_named(string file, string written, string spoilt, string expected)
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        var path = Path.Combine(temp.Logbook, file);
        var text = File.ReadAllText(path);
        Assert.Contains(written, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(written, spoilt, StringComparison.Ordinal));
        var problems = Assert.Throws<LogbookContentException>(() => Logbook.Open(temp.Logbook)).Problems;
        Assert.Contains(problems, problem => problem.ToString().Contains(expected, StringComparison.Ordinal));
    }
}
