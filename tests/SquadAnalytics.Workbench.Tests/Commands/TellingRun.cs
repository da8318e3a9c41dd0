using System.Text.Json;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>A kept run of a notebook that shows a junior's name, health entries, body mass, a small group, and texts that look like formulas.</summary>
public sealed class TellingRun : IDisposable
{
    /// <summary>What must be in no export.</summary>
    public static readonly IReadOnlyList<string> Secrets = ["Smaland", "Dizzy", "63.17", "287.31"];

    private const string Formula = "=HYPERLINK(\\\"http://elsewhere.example\\\")";

    private static readonly string[] Cells =
    [
        "string athlete = \"Iva Smaland\"; // Boxer",
        "foreach (var note in logbook.HealthNotes) Console.WriteLine(note);\nConsole.WriteLine(string.Join(\", \", logbook.Squad.Athletes.Select(a => a.DisplayName)));",
        "display(logbook.HealthNotes);\ndisplay(logbook.HealthNotes[0].Text);\ndisplay(logbook.Squad.Contexts[0]);\nlogbook.Squad.Athletes.Select(a => new { a.DisplayName, a.Code })",
        $"new Table(\"Table of Smaland, Iva\", [new(\"boxer\"), TableColumn.Figures(\"body mass\", \"kg\"), new(\"remark\")],\n    [[\"Iva Smaland\", TableCell.Figure(63.17, 2), \"{Formula}\"], [\"Bea Vanth\", TableCell.Figure(61, 2), \"+1\"], [\"\\t@x\", TableCell.Nothing, \"-2\"]]) {{ Notes = logbook.HealthNotes.Select(n => n.Text).ToList() }}",
        "new Table(\"By group\", [new(\"group\"), TableColumn.Figures(\"mean total\", \"s\")], [[\"juniors\", TableCell.Figure(280 + 7.31, 2).OfGroup(3)], [\"seniors\", TableCell.Figure(301.5, 2).OfGroup(9)]])",
        "var tests = logbook.Squad.SessionsOf(\"j1\");\nnew HowWasItPaced(logbook.Squad.Athlete(\"j1\").DisplayName, tests[^1])",
        "new HowWasItPaced(\"BV\", logbook.Squad.SessionsOf(\"o1\")[^1])",
        "display(new Finding(\"Iva Smaland: dizzy in set 4, seen by the doctor.\"));\ndisplay(new Finding(\"Before the test: sleep 8.0 h (usual 8.0) and body mass 63.17 kg (usual 62.00).\") { Source = \"Hopkins 2000\", Notes = [\"Iva  SMALAND\"] });",
    ];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("squad-telling-");

    public TellingRun()
    {
        WriteLogbook();
        var cells = Cells.Select((source, k) => new { cell_type = "code", id = $"cell{k}", metadata = new { tags = k == 0 ? (string[])["parameters"] : [] }, source, outputs = Array.Empty<object>(), execution_count = (int?)null }).ToList<object>();
        cells.Insert(0, new { cell_type = "markdown", id = "prose", metadata = new { }, source = "# About Iva Smaland\n\nHow is **Iva** Smaland?" });
        File.WriteAllText(Path.Combine(_folder.FullName, "telling.ipynb"), JsonSerializer.Serialize(new { nbformat = 4, nbformat_minor = 5, metadata = new { }, cells }));
        var run = CommandRun.In(_folder.FullName, "run", "telling.ipynb", "--logbook", "logbook", "--out", "kept");
        if (run.ExitCode != 0) throw new InvalidOperationException(run.Errors);
    }

    /// <summary>The kept run.</summary>
    public string Kept => Path.Combine(_folder.FullName, "kept");

    /// <summary>Its logbook.</summary>
    public string LogbookPath => Path.Combine(_folder.FullName, "logbook");

    /// <inheritdoc />
    public void Dispose() => _folder.Delete(recursive: true);

    private void WriteLogbook()
    {
        var day = new DateOnly(2031, 3, 4);
        var protocol = new Protocol("quay-v1", "Quay circuit", [], 4, new Seconds(120));
        using var logbook = Logbook.Create(LogbookPath, "Quay");
        logbook.Commit(new LogbookChange("squad")
        {
            Athletes =
            [
                new Athlete("j1", "Iva Smaland", "IS") { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] },
                new Athlete("o1", "Bea Vanth", "BV") { Consents = [new Consent(Consent.NamedInReports, new DateOnly(2030, 1, 1))] },
            ],
            Protocols = [protocol],
            Sessions = [Session.FromTimes("s1", "j1", day, protocol, 71, 72, 73, 74), Session.FromTimes("s2", "o1", day, protocol, 70, 71, 72, 75)],
            Contexts = [new DayContext("j1", day) { BodyMassKilograms = 63.17 }],
            HealthNotes = [new HealthNote("h1", "j1", day, "Dizzy in set 4, seen by the doctor")],
        });
    }
}
