using System.IO.Compression;
using System.Text;
using System.Text.Json;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>Exports of one run whose notebook shows everything that must not leave the club.</summary>
public sealed class ExportCommandTests(TellingRun telling) : IClassFixture<TellingRun>, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("squad-export-").FullName;

    public void Dispose()
    {
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(_folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Directory.Delete(_folder, recursive: true);
    }

    [Theory]
    [InlineData("html", "C")]
    [InlineData("docx", "de_DE.UTF-8")]
    [InlineData("csv", "tr_TR.UTF-8")]
    [InlineData("figures", "tr_TR.UTF-8")]
    public void No_export_holds_a_junior_s_name_a_health_entry_or_a_small_group(string kind, string language)
    {
        var result = CommandRun.In(_folder, language, ["export", telling.Kept, "--to", kind, "--out", "out"]);
        Assert.Equal((0, "Shown by code: 1 athletes who are juniors or did not consent to be named.\n"), (result.ExitCode, result.Errors));
        var files = Directory.GetFiles(Path.Combine(_folder, "out"));
        Assert.Equal(files.Select(file => "  " + Path.GetFileName(file)).Order(StringComparer.Ordinal), result.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Order(StringComparer.Ordinal));
        var texts = files.SelectMany(Texts).ToList();
        Assert.NotEmpty(texts);
        foreach (var secret in TellingRun.Secrets) Assert.All(texts, text => Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase));
        if (kind != "figures") Assert.Contains(texts, text => text.Contains("Bea Vanth", StringComparison.Ordinal) || text.Contains("BV", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_run_as_the_coach_keeps_it_shows_everything()
    {
        // Without this the test above could not fail.
        var texts = Directory.GetFiles(telling.Kept, "*", SearchOption.AllDirectories).SelectMany(Texts).ToList();
        foreach (var secret in TellingRun.Secrets) Assert.Contains(texts, text => text.Contains(secret, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void No_text_runs_as_a_formula_and_every_table_is_described()
    {
        Assert.Equal(0, Export("csv").ExitCode);
        using var package = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(_folder, "out", "datapackage.json")));
        var described = package.RootElement.GetProperty("resources").EnumerateArray().Select(resource => resource.GetProperty("path").GetString()!).ToList();
        Assert.Equal(Directory.GetFiles(Path.Combine(_folder, "out"), "*.csv").Select(Path.GetFileName).Order(StringComparer.Ordinal), described.Order(StringComparer.Ordinal));
        Assert.Contains("sessions.csv", described);
        Assert.Equal("athlete,date,occasion,protocol,set,work time (s),status", File.ReadLines(Path.Combine(_folder, "out", "sets.csv")).First());

        // The characters after which a spreadsheet computes: OWASP, CSV Injection.
        foreach (var file in described)
        {
            foreach (var cell in File.ReadAllText(Path.Combine(_folder, "out", file)).Split([',', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries))
            {
                var begin = cell.TrimStart('"', ' ');
                if (begin.Length > 0 && "=+-@\t".Contains(begin[0], StringComparison.Ordinal)) Assert.True(double.TryParse(begin, System.Globalization.CultureInfo.InvariantCulture, out _), $"{file}: {cell}");
            }
        }
    }

    [Fact]
    public void The_document_is_valid_and_its_figures_tables_and_references_are_numbered_and_listed()
    {
        Assert.Equal(0, Export("docx").ExitCode);
        using var document = WordprocessingDocument.Open(Path.Combine(_folder, "out", "report.docx"), false);
        var errors = new OpenXmlValidator(FileFormatVersions.Office2019).Validate(document).Select(error => $"{error.Path?.XPath}: {error.Description}");
        Assert.Equal("", string.Join("\n", errors));
        var words = document.MainDocumentPart!.Document!.Body!.InnerText;
        Assert.Contains("SEQ Table", words, StringComparison.Ordinal);
        Assert.Contains("SEQ Figure", words, StringComparison.Ordinal);
        Assert.Contains("Hopkins WG (2000) Sports Med 30:1-15.", words, StringComparison.Ordinal);
        Assert.Contains("=HYPERLINK(\"http://elsewhere.example\")", words, StringComparison.Ordinal);
        Assert.Empty(document.MainDocumentPart!.Document!.Descendants<DocumentFormat.OpenXml.Wordprocessing.Hyperlink>());
        Assert.All(document.MainDocumentPart!.Document!.Descendants<DocumentFormat.OpenXml.Wordprocessing.FieldCode>(), code => Assert.StartsWith(" SEQ ", code.Text, StringComparison.Ordinal));
        Assert.Empty(document.ExternalRelationships.Concat(document.MainDocumentPart!.ExternalRelationships));
    }

    [Fact]
    public void A_figure_without_a_name_keeps_its_picture_and_one_with_a_junior_s_name_loses_the_pixels()
    {
        Assert.Equal(0, Export("figures").ExitCode);
        Assert.Equal(["captions.txt", "figure-01.svg", "figure-02.png", "figure-02.svg"], Directory.GetFiles(Path.Combine(_folder, "out")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("IS", File.ReadAllText(Path.Combine(_folder, "out", "figure-01.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_export_is_listed_in_the_logbook_with_whom_it_shows()
    {
        Assert.Equal(0, Export("html").ExitCode);
        using var logbook = Logbook.Open(telling.LogbookPath);
        var export = Assert.Single(logbook.Exports, export => export.Destination == Path.Combine(_folder, "out"));
        Assert.Equal("telling as html", export.Kind);
        Assert.True(export.Shows("j1"));
    }

    [Theory]
    [InlineData("RUN", "Say what it is to become")]
    [InlineData("RUN --to pdf", "known are html, docx, csv, figures")]
    [InlineData("--to html", "Name the run")]
    [InlineData("RUN RUN --to html", "one too many")]
    [InlineData("nothing --to html", "There is no kept run 'nothing'")]
    [InlineData("latest --to html", "No run is kept in")]
    [InlineData(". --to html", "holds no kept run")]
    [InlineData("RUN --to html --out full", "is not empty")]
    [InlineData("RUN --to html --out full/file.txt", "is a file")]
    [InlineData("RUN --to html --logbook nowhere", "There is no logbook in")]
    [InlineData("RUN --to html --fast 1", "There is no option --fast")]
    public void Wrong_usage_exits_with_two_and_says_what_is_wrong(string arguments, string reason)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "full"));
        File.WriteAllText(Path.Combine(_folder, "full", "file.txt"), "mine");
        var result = CommandRun.In(_folder, "C", ["export", .. arguments.Split(' ').Select(word => word == "RUN" ? telling.Kept : word)]);
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains(reason, result.Errors, StringComparison.Ordinal);
        Assert.Equal(["full"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void Without_a_folder_it_goes_to_exports_here_and_a_second_one_beside_it()
    {
        var name = $"{Path.GetFileName(telling.Kept)}-html";
        foreach (var _ in new int[2]) Assert.Equal(0, CommandRun.In(_folder, "export", telling.Kept, "--to", "html").ExitCode);
        Assert.Equal([name, name + "-2"], Directory.GetDirectories(Path.Combine(_folder, "exports")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_logbook_that_is_open_elsewhere_cannot_list_the_export_so_there_is_none_unless_wanted()
    {
        using (Logbook.Open(telling.LogbookPath))
        {
            var refused = Export("html");
            Assert.Equal(1, refused.ExitCode);
            Assert.Contains("cannot list the export", refused.Errors, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFileSystemEntries(_folder));
            Assert.Equal(0, Export("html", "--unlisted").ExitCode);
        }
    }

    [Fact]
    public void A_target_that_cannot_be_written_is_told_and_nothing_is_left()
    {
        // Below a file there is no folder: the same for a user who may write everywhere.
        File.WriteAllText(Path.Combine(_folder, "file"), "");
        var result = CommandRun.In(_folder, "export", telling.Kept, "--to", "html", "--out", "file/out");
        Assert.Equal(1, result.ExitCode);
        Assert.StartsWith("Nothing was exported: ", result.Errors, StringComparison.Ordinal);
        Assert.Equal(["file"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_run_that_was_tampered_with_is_told()
    {
        var copy = Path.Combine(_folder, "copy");
        Directory.CreateDirectory(copy);
        foreach (var file in (string[])["run.json", "executed.ipynb"]) File.Copy(Path.Combine(telling.Kept, file), Path.Combine(copy, file));
        File.WriteAllText(Path.Combine(copy, "run.json"), "{\"notebook\":\"x\"}");
        var result = CommandRun.In(_folder, "export", copy, "--to", "html");
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("cannot be read", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_kill_at_any_moment_leaves_no_half_export_under_the_final_name()
    {
        Assert.Equal(0, Export("csv").ExitCode);
        var whole = Directory.GetFiles(Path.Combine(_folder, "out")).Length;
        Directory.Delete(Path.Combine(_folder, "out"), recursive: true);
        foreach (var delay in (int[])[250, 350, 450, 550, 650])
        {
            using (var program = CommandRun.Start(_folder, "export", telling.Kept, "--to", "csv", "--out", "out"))
            {
                Thread.Sleep(delay);
                program.Kill();
                program.WaitForExit();
            }

            if (!Directory.Exists(Path.Combine(_folder, "out"))) continue;
            Assert.Equal(whole, Directory.GetFiles(Path.Combine(_folder, "out")).Length);
            Directory.Delete(Path.Combine(_folder, "out"), recursive: true);
        }

        // What a kill left beside it is in nobody's way.
        Directory.CreateDirectory(Path.Combine(_folder, "out.partial"));
        File.WriteAllText(Path.Combine(_folder, "out.partial", "half.csv"), "half");
        Assert.Equal(0, Export("csv").ExitCode);
        Assert.Equal(["out"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
        Assert.Equal(whole, Directory.GetFiles(Path.Combine(_folder, "out")).Length);
    }

    private CommandRun Export(string kind, params string[] more) => CommandRun.In(_folder, "C", ["export", telling.Kept, "--to", kind, "--out", "out", .. more]);

    private static IEnumerable<string> Texts(string file)
    {
        if (Path.GetExtension(file) == ".png") return [];
        if (Path.GetExtension(file) != ".docx") return [File.ReadAllText(file)];
        using var zip = ZipFile.OpenRead(file);
        return [.. zip.Entries.Where(entry => entry.Name.EndsWith(".xml", StringComparison.Ordinal)).Select(entry =>
        {
            using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
            return reader.ReadToEnd();
        })];
    }
}
