using System.Text;
using static SquadAnalytics.SampleSquad.WorkbookCell;

namespace SquadAnalytics.SampleSquad;

/// <summary>Clipboard files of the sample squad as people really hand them in. All names and times are invented.</summary>
public static class ClipboardFiles
{
    /// <summary>Name of the file that says what the folder is.</summary>
    public const string ReadmeName = "README.md";

    private static readonly DateOnly ThirdOfApril = new(2031, 4, 3);

    /// <summary>All files, by name.</summary>
    public static IReadOnlyList<ClipboardFile> All { get; } =
    [
        new("accents-old-encoding.csv", "windows-1252, commas, totals; a wrong total, \"Last, First\", a name without its accents", Ansi(OldEncoding)),
        new("april-long.tsv", "UTF-16, tabs, one row per set, dates that may be 3 April or 4 March", Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(AprilLong)).ToArray()),
        new("evening-semicolons.csv", "UTF-8 with its mark, semicolons, decimal commas, letterhead, DNF and DNS, unreadable cells, an athlete nobody knows", [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(Evening)]),
        new("junior-stations.csv", "UTF-8, station times that rise within each set, the date in the title only", Encoding.UTF8.GetBytes(JuniorStations)),
        new("no-headers.txt", "bars between the cells, nothing names the columns, no date, no protocol", Encoding.UTF8.GetBytes(NoHeaders)),
        new("running-clock.csv", "the running clock at each finish instead of work times, a test written twice", Encoding.UTF8.GetBytes(RunningClock)),
        new("two-evenings.xlsx", "a workbook: dates as dates and as a sheet's name, times typed as 1:02 and stored as one hour two minutes, formulas, a hidden sheet", TwoEvenings()),
        new("years-from-1904.xlsx", "a workbook that counts its days from 1904, one row per set, a date where a time belongs", YearsFrom1904()),
    ];

    /// <summary>Writes all files and a README into a folder.</summary>
    /// <param name="folder">The folder; made where it is not there.</param>
    /// <param name="command">The command that makes the folder, for the README.</param>
    public static void Write(string folder, string command)
    {
        Directory.CreateDirectory(folder);
        foreach (var file in All) File.WriteAllBytes(Path.Combine(folder, file.Name), file.Content);
        File.WriteAllText(Path.Combine(folder, ReadmeName), Readme(command));
    }

    /// <summary>The README of the folder.</summary>
    public static string Readme(string command) => string.Join('\n',
    [
        "# Clipboard files",
        "",
        "Set times as people really hand them in, to try the import with. The club, its boxers and all times are invented; the names are those of",
        "the sample squad in `../squad`.",
        "",
        "| file | what is messy about it |",
        "| --- | --- |",
        .. All.Select(file => $"| `{file.Name}` | {file.About} |"),
        "",
        $"Made by `{command}`.",
        "",
    ]);

    private const string OldEncoding =
        "Name,Date,Protocol,Set 1,Set 2,Set 3,Set 4,Total\r\n"
        + "Zoë Tarrakainen,2031-04-10,Long Four,66.2,67,67.9,69.4,270.5\r\n"
        + "\"Ollivarne, Dragan\",2031-04-10,Long Four,70.1,71.3,72,75.2,288.6\r\n"
        + "Anahi Wexcombe,2031-04-10,Long Four,64,64.4,65.1,66,259.5\r\n"
        + "Kofi Lundmarsh,2031-04-10,Long Four,61.9,62.3,63,64.8,262\r\n"
        + "Piers Tamanoah,2031-04-10,Long Four,68,69.1,DNF,,\r\n";

    private const string AprilLong =
        "boxer\tdate\tprotocol\tset\tseconds\r\n"
        + "DOL\t03/04/2031\tsix-five\t1\t61.8\r\nDOL\t03/04/2031\tsix-five\t2\t62.6\r\nDOL\t03/04/2031\tsix-five\t3\t63.9\r\n"
        + "DOL\t03/04/2031\tsix-five\t4\t68.1\r\nDOL\t03/04/2031\tsix-five\t5\t67.7\r\nDOL\t03/04/2031\tsix-five\t6\t68.3\r\n"
        + "NVA\t17/04/2031\tsix-five\t1\t58.8\r\nNVA\t17/04/2031\tsix-five\t2\t61.1\r\nNVA\t17/04/2031\tsix-five\t3\t62\r\n"
        + "NVA\t17/04/2031\tsix-five\t4\t62.4\r\nNVA\t17/04/2031\tsix-five\t5\t62.9\r\nNVA\t17/04/2031\tsix-five\t6\t1.03\r\n";

    private const string Evening =
        "Quillmere Boxing Gym (invented);;;;;;;;\r\n"
        + "Thursday 3 April 2031, Six Fives;;;;;;;;\r\n"
        + ";;;;;;;;\r\n"
        + "Athlete;Set 1;Set 2;Set 3;Set 4;Set 5;Set 6;Total;Notes\r\n"
        + "Søren Mbalakwe;60,2;61;61,4;60,8;61,9;62;367,3;\r\n"
        + "Anahí Wexcombe;58;58,4;59,1;1:01;59,9;60,3;356,7;long set 4\r\n"
        + "Teodor Quaysley;62;63;64;DNF;;;;knee\r\n"
        + "Łucja Overdene;DNS;;;;;;;ill\r\n"
        + "Amaru Fensgate;1:72;63;62s4;64;65;66;;\r\n"
        + "Yusra Halbekker;;;;;;;;\r\n"
        + "Brona Quilter;66;67;68;69;70;71;411;first time\r\n"
        + "matiu gravelock;64;65;65;66;66;67;393;\r\n";

    private const string JuniorStations =
        "Six Fives junior,24 April 2031\n"
        + "\n"
        + "Name,S1 squat jumps,S1 press-ups,S1 mountain climbers,S1 burpees,S1 sit-throughs,S2 squat jumps,S2 press-ups,S2 mountain climbers,S2 burpees,S2 sit-throughs\n"
        + "J1,12.5,22.7,33.9,47.7,54.9,12.8,23.2,34.6,48.6,56.1\n"
        + "J2,13.1,23.9,35.4,49.8,57.2,13.3,24.4,36.2,51,58.6\n"
        + "J3,12.2,22.1,33,46.4,53.5,12.5,22.8,DNF,,\n";

    private const string NoHeaders =
        "Dragan Ollivarne|61.5|62.2|63.8|67.9|67.1|68\n"
        + "Nkechi Varnhalm|58.9|60.8|61.7|62.1|62.5|63\n";

    private const string RunningClock =
        "Name,Date,Protocol,1,2,3,4,5,6\n"
        + "Bashir Kettlesby,2031-04-03,Six Fives,1:01.4,2:42.1,4:22.8,6:03.4,7:44,9:24.9\n"
        + "Hiroto Vellacorte,2031-04-03,Six Fives,1:00,2:40.5,4:21.2,6:02,7:42.6,9:23.1\n"
        + "Sorcha Dimakopa,2031-04-03,Six Fives,59.8,60.4,61,61.2,61.9,62.3\n"
        + "Sorcha Dimakopa,2031-04-03,Six Fives,59.8,60.4,61,61.2,61.9,62.3\n";

    // Western European code page; every sign of these names has the same number there as in Unicode.
    private static byte[] Ansi(string text) => Encoding.Latin1.GetBytes(text);

    private static byte[] TwoEvenings() => WorkbookWriter.Write(
    [
        new WorkbookSheet("10 April 2031",
        [
            [Shared("Six Fives - main hall")],
            [],
            [Shared("Athlete"), Shared("Set 1"), Shared("Set 2"), Shared("Set 3"), Shared("Set 4"), Shared("Set 5"), Shared("Set 6"), Shared("Total")],
            [Shared("İlkay Stormhaugh"), Of(57.6), Of(58.1), Of(58.8), Of(58.4), Of(59), Of(59.7), Formula("SUM(B4:G4)", 351.6)],
            [Shared("Nguyệt Harrowmont"), Typed(1, 2), Typed(1, 3), Typed(1, 2), Typed(1, 4), Typed(1, 5), Typed(1, 5)],
            [Inline("Zoë Tarrakainen"), Of(61.2), Inline("1:02.3"), Of(62.8), Of(63.4), Shared("DNF")],
        ]),
        new WorkbookSheet("Long Four",
        [
            [Shared("Name"), Shared("Date"), Shared("Protocol"), Shared("Set 1"), Shared("Set 2"), Shared("Set 3"), Shared("Set 4")],
            [Shared("Kofi Lundmarsh"), Of(new DateOnly(2031, 4, 17)), Shared("Long Four"), Elapsed(61.9), Elapsed(62.3), Elapsed(63), Elapsed(64.8)],
            [Shared("Matiu Gravelock"), Of(new DateOnly(2031, 4, 17)), Shared("Long Four"), Of(66), Of(66.8), Of(67.9), Of(69)],
        ]),
        new WorkbookSheet("old list", [[Shared("Name"), Shared("Set 1"), Shared("Set 2")], [Shared("Nobody"), Of(60), Of(61)]]) { IsHidden = true },
    ]);

    private static byte[] YearsFrom1904() => WorkbookWriter.Write(
    [
        new WorkbookSheet("Sheet1",
        [
            [Shared("Code"), Shared("Date"), Shared("Protocol"), Shared("Set"), Shared("Seconds")],
            .. new[] { 66.5, 67.2, 67.8 }.Select((seconds, index) => (IReadOnlyList<WorkbookCell>)[Shared("MGR"), Of(ThirdOfApril, true), Shared("long-four"), Of(index + 1), Of(seconds)]),
            [Shared("MGR"), Of(ThirdOfApril, true), Shared("long-four"), Of(4), Of(new DateOnly(2031, 2, 1), true)],
        ]),
    ], countsFrom1904: true);
}
