using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

/// <summary>Invented content for logbook tests.</summary>
internal static class Invented
{
    public static readonly DateOnly Day = new(2031, 3, 4);

    public static Protocol Quay { get; } = new("quay-v1", "Quay circuit", [new Station("burpees", 8), new Station("squats", 15)], 4, new Seconds(110.5))
    {
        Bands = [new PerformanceBand("steady", new Seconds(220), new Seconds(260), new DateOnly(2031, 1, 1)), new PerformanceBand("quick", new Seconds(180.5), new Seconds(220))],
    };

    public static Athlete Ada { get; } = new("a1", "Ada Invented", "AI")
    {
        Aliases = ["Ada I.", "Инвентед, Ада"],
        Joined = new DateOnly(2030, 9, 1),
        BirthYear = 2008,
        Sex = Sex.Female,
        Groups = [new GroupMembership("seniors", new DateOnly(2030, 9, 1)), new GroupMembership("juniors", new DateOnly(2029, 9, 1), new DateOnly(2030, 8, 31))],
        Consents = [new Consent("record times", new DateOnly(2030, 9, 1), GivenBy: "the athlete")],
    };

    public static Athlete Bo { get; } = new("a2", "Bo \"the wall\", Makebelieve", "BM");

    public static Session AdaFirst { get; } = new("s1", "a1", Day, Quay, [new SetTime(1, new Seconds(50.1)), new SetTime(2, SetStatus.CompletedUntimed), new SetTime(3, SetStatus.StoppedForHealth)])
    {
        Stations = [new StationTime(1, 1, new Seconds(20.04)), new StationTime(1, 2, SetStatus.CompletedUntimed)],
        TimingResolution = new Seconds(0.1),
        Timer = "hand, one watch",
        Place = "hall\nupstairs",
        TemperatureCelsius = -3.5,
    };

    public static Session BoFirst { get; } = SquadAnalytics.Session.FromTimes("s2", "a2", Day, Quay, 48, 49.25, 51.5, 52);

    /// <summary>Something in every table.</summary>
    public static LogbookChange Everything { get; } = new("everything")
    {
        Athletes = [Ada, Bo],
        Protocols = [Quay, new Protocol("quay-v1-j", "Quay circuit, juniors", [], 3, null) { VariantOf = "quay-v1", StartRule = StartRule.StopAtMissedStart }],
        Sessions = [AdaFirst, BoFirst],
        Contexts = [new DayContext("a1", Day) { SessionRpe = 7.5, Minutes = 80, SparringRoundsBefore = 3, SleepHours = 7.25, BodyMassKilograms = 61.3 }, new DayContext("a2", Day) { IsRestDay = true }],
        Events = [new AthleteEvent("e1", "a2", Day, EventKind.HeadKnock) { ClearedOn = Day.AddDays(9) }, new AthleteEvent("e2", "a1", Day, EventKind.WeighIn)],
        Blocks = [new TrainingBlock("b1", "Spring", Day, Day.AddDays(41)) { Emphasis = "strength endurance", Members = ["a1", "a2"] }, new TrainingBlock("b2", "Summer", Day.AddDays(50), Day.AddDays(90)) { DefinedAfterData = true }],
        AgeGroups = [new AgeGroup("Harbour (invented)", "youth", new DateOnly(2030, 1, 1), 15, 18) { Source = "invented" }, new AgeGroup("Harbour (invented)", "adults", new DateOnly(2030, 1, 1), 19, null)],
        WeightClasses =
        [
            new WeightClass("Harbour (invented)", "light", new DateOnly(2031, 3, 1), null, 57.5) { Sex = Sex.Female, AgeGroup = "youth", Source = "invented, \"page 2\"" },
            new WeightClass("Harbour (invented)", "=heavy", new DateOnly(2031, 3, 1), 57.5, null),
        ],
        HealthNotes = [new HealthNote("n1", "a1", Day, "=cold, \"mild\"\r\nsecond line")],
        HeldRows =
        [
            new HeldRow("h1", HeldRowState.Refused, "week-1.csv", null, 7, [new HeldCell(1, "Name", "ada i."), new HeldCell(2, "", "-62")])
            {
                Problems = [new CellProblem("week-1.csv", 7, "is negative", "seconds above 0") { Column = "", ColumnNumber = 2, Text = "-62" }, new CellProblem("week-1.csv", 7, "is too short", "five cells")],
                ImportCopy = "week-1.csv",
            },
            new HeldRow("h2", HeldRowState.AwaitingDecision, "week-1.xlsx", "Tuesday", 9, [new HeldCell(1, "", "'=1+1")]) { DecisionIds = ["d1", "d2"] },
        ],
        ImportCopies = [new ImportCopy("week-1.csv", "Name,Set 1\nAda I.,-62\n"u8.ToArray())],
    };

    public static Logbook Filled(TempFolder temp)
    {
        var logbook = Logbook.Create(temp.Logbook, "Quay Boxing (invented)");
        logbook.Commit(Everything);
        logbook.RecordExport("report", "/media/stick/report.html", ["a1"]);
        return logbook;
    }

    /// <summary>A further complete session of Bo's.</summary>
    public static Session BoLater(int week) => SquadAnalytics.Session.FromTimes($"s-bo-{week}", "a2", Day.AddDays(7 * week), Quay, 48 + week, 49, 50, 51);

    /// <summary>A further week: a session, its context, a copy of its file.</summary>
    public static LogbookChange Week { get; } = new("week 1")
    {
        Sessions = [BoLater(1)],
        Contexts = [new DayContext("a2", Day.AddDays(7)) { Minutes = 75 }],
        ImportCopies = [new ImportCopy("week-2.csv", "Name,Set 1\nBo,49\n"u8.ToArray())],
    };
}
