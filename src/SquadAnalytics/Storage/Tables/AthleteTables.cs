namespace SquadAnalytics.Storage.Tables;

/// <summary>The athletes, with their aliases, group memberships and consents.</summary>
internal static class AthleteTables
{
    private static readonly Column Id = Column.Text("athlete_id", "Opaque id, unique in the logbook").Required();
    private static readonly Column Name = Column.Text("display_name", "Name as the coach writes it").Required();
    private static readonly Column Code = Column.Text("code", "Short code for reports that must not show names").Required();
    private static readonly Column Joined = Column.Date("joined_date", "First day in the squad");
    private static readonly Column Left = Column.Date("left_date", "Last day in the squad");
    private static readonly Column BirthYear = Column.Integer("birth_year", "Year of birth", 1900);
    private static readonly Column SexOf = Column.Choice<Sex>("sex", "Sex as entered");

    private static readonly Column Who = Column.Text("athlete_id", "The athlete").Required();
    private static readonly Column Alias = Column.Text("alias", "Another spelling met on clipboards and confirmed by a person").Required();
    private static readonly Column Group = Column.Text("group_name", "Group within the squad").Required();
    private static readonly Column Purpose = Column.Text("purpose", "What the consent allows").Required();
    private static readonly Column From = Column.Date("from_date", "First day").Required();
    private static readonly Column To = Column.Date("to_date", "Last day, empty while it lasts");
    private static readonly Column GivenBy = Column.Text("given_by", "Who gave the consent: the athlete or a guardian");

    private static readonly IReadOnlyDictionary<string, Sex> Sexes = Word.All<Sex>();

    public static Table Athletes { get; } = new("athletes", "Members of the squad", [Id, Name, Code, Joined, Left, BirthYear, SexOf]) { Key = [Id] };

    public static Table Aliases { get; } = new("athlete-aliases", "Other spellings of athletes' names", [Who, Alias]) { Key = [Who, Alias], References = [Reference(Who)] };

    public static Table Groups { get; } = new("athlete-groups", "Dated memberships of groups within the squad", [Who, Group, From, To]) { References = [Reference(Who)] };

    public static Table Consents { get; } = new("consents", "Dated consents", [Who, Purpose, From, To, GivenBy]) { References = [Reference(Who)] };

    /// <summary>The key by which other tables refer to an athlete.</summary>
    public static ForeignKey Reference(Column column) => new(column, "athletes", "athlete_id");

    public static IReadOnlyList<Athlete> Read(TableSource source)
    {
        var seen = new Dictionary<string, Athlete>(StringComparer.Ordinal);
        var athletes = source.ReadFirst(Athletes, row =>
        {
            var athlete = new Athlete(row.Text(Id), row.Text(Name), row.Text(Code))
            {
                Joined = row.DateOrNull(Joined),
                Left = row.DateOrNull(Left),
                BirthYear = row.IntegerOrNull(BirthYear),
                Sex = row.Choice(SexOf, Sexes),
            };
            row.Once(Id, seen, athlete.Id, athlete);
            return athlete;
        });
        var aliases = source.Read(Aliases, row => (row.Referred(Who, seen, Athletes).Id, Value: row.Text(Alias))).ToLookup(row => row.Id, row => row.Value);
        var groups = source.Read(Groups, row => (row.Referred(Who, seen, Athletes).Id, Value: new GroupMembership(row.Text(Group), row.Date(From), row.DateOrNull(To)))).ToLookup(row => row.Id, row => row.Value);
        var consents = source.Read(Consents, row => (row.Referred(Who, seen, Athletes).Id, Value: new Consent(row.Text(Purpose), row.Date(From), row.DateOrNull(To), row.TextOrNull(GivenBy)))).ToLookup(row => row.Id, row => row.Value);
        return [.. athletes.Select(athlete => athlete with { Aliases = [.. aliases[athlete.Id]], Groups = [.. groups[athlete.Id]], Consents = [.. consents[athlete.Id]] })];
    }

    public static void Write(IReadOnlyList<Athlete> athletes, TableSink sink)
    {
        sink.Write(Athletes, athletes, (row, athlete) => row
            .Text(athlete.Id).Text(athlete.DisplayName).Text(athlete.Code).Date(athlete.Joined).Date(athlete.Left).Integer(athlete.BirthYear).Text(Word.Of(athlete.Sex)));
        sink.Write(Aliases, athletes.SelectMany(athlete => athlete.Aliases, (athlete, alias) => (athlete.Id, alias)), (row, item) => row.Text(item.Id).Text(item.alias));
        sink.Write(Groups, athletes.SelectMany(athlete => athlete.Groups, (athlete, group) => (athlete.Id, group)), (row, item) => row
            .Text(item.Id).Text(item.group.Group).Date(item.group.From).Date(item.group.To));
        sink.Write(Consents, athletes.SelectMany(athlete => athlete.Consents, (athlete, consent) => (athlete.Id, consent)), (row, item) => row
            .Text(item.Id).Text(item.consent.Purpose).Date(item.consent.From).Date(item.consent.To).Text(item.consent.GivenBy));
    }
}
