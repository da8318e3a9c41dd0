namespace SquadAnalytics.Storage.Tables;

/// <summary>Federations' dated tables of age groups and weight classes, entered by the club.</summary>
internal static class CategoryTables
{
    private static readonly Column Federation = Column.Text("federation", "Whose table it is").Required();
    private static readonly Column ValidFrom = Column.Date("valid_from_date", "First test date to which this version of the table applies").Required();
    private static readonly Column Name = Column.Text("group_name", "Name of the age group").Required();
    private static readonly Column FromAge = Column.Integer("from_age", "Youngest age, reached in the calendar year of the test", 0).Required();
    private static readonly Column ToAge = Column.Integer("to_age", "Oldest age, empty for no limit", 0);
    private static readonly Column Source = Column.Text("source", "Where the row was taken from");

    private static readonly Column Class = Column.Text("class_name", "Name of the weight class").Required();
    private static readonly Column Above = Column.Number("above_kg", "kg", "Limit below, itself not in the class; empty for the lightest", 0);
    private static readonly Column UpTo = Column.Number("up_to_kg", "kg", "Limit above, itself in the class; empty for the heaviest", 0);
    private static readonly Column SexOf = Column.Choice<Sex>("sex", "The sex it is for; unknown means for all");
    private static readonly Column Group = Column.Text("group_name", "The age group it is for, empty for all");

    private static readonly IReadOnlyDictionary<string, Sex> Sexes = Word.All<Sex>();

    public static Table AgeGroups { get; } = new("age-groups", "Federations' age groups; the rows with the latest valid-from date apply", [Federation, ValidFrom, Name, FromAge, ToAge, Source]) { IsOptional = true };

    public static Table WeightClasses { get; } = new("weight-classes", "Federations' weight classes, above < body mass <= up to; the rows with the latest valid-from date apply", [Federation, ValidFrom, Class, SexOf, Group, Above, UpTo, Source]) { IsOptional = true };

    public static IReadOnlyList<AgeGroup> ReadAgeGroups(TableSource source) => source.Read(AgeGroups, row =>
        new AgeGroup(row.Text(Federation), row.Text(Name), row.Date(ValidFrom), row.Integer(FromAge), row.IntegerOrNull(ToAge)) { Source = row.TextOrNull(Source) });

    public static IReadOnlyList<WeightClass> ReadWeightClasses(TableSource source) => source.Read(WeightClasses, row =>
        new WeightClass(row.Text(Federation), row.Text(Class), row.Date(ValidFrom), row.NumberOrNull(Above), row.NumberOrNull(UpTo)) { Sex = row.Choice(SexOf, Sexes), AgeGroup = row.TextOrNull(Group), Source = row.TextOrNull(Source) });

    public static void WriteAgeGroups(IReadOnlyList<AgeGroup> groups, TableSink sink) => sink.Write(AgeGroups, groups, (row, group) => row
        .Text(group.Federation).Date(group.ValidFrom).Text(group.Name).Integer(group.FromAge).Integer(group.ToAge).Text(group.Source));

    public static void WriteWeightClasses(IReadOnlyList<WeightClass> classes, TableSink sink) => sink.Write(WeightClasses, classes, (row, weight) => row
        .Text(weight.Federation).Date(weight.ValidFrom).Text(weight.Name).Text(Word.Of(weight.Sex)).Text(weight.AgeGroup).Number(weight.AboveKilograms).Number(weight.UpToKilograms).Text(weight.Source));
}
