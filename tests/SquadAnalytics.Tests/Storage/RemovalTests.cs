using System.IO.Compression;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public sealed class RemovalTests
{
    [Fact]
    public void Removing_a_person_leaves_no_trace_in_any_file_of_the_folder()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        FillWithTraces(temp, logbook);
        var report = logbook.RemovePerson("a1");

        Assert.Equal(1, report.Sessions);
        Assert.Equal(["imports/by-surname.xlsx", "imports/week-1.csv", "reports/2031-03-05-slowdown", "reports/entities.html", "reports/escaped.ipynb"], report.ErasedFiles.Where(path => !path.StartsWith("drafts", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.Equal(["reports/photo.png"], report.UnsearchedFiles);
        Assert.Equal(["report to /media/stick/report.html", "backup to " + temp.At("club.zip")], report.UnreachableExports.Select(export => $"{export.Kind} to {export.Destination}"));
        Assert.Equal(["reports/nobody.html", "reports/photo.png"], Directory.GetFileSystemEntries(logbook.ReportsFolder).Select(path => "reports/" + Path.GetFileName(path)).Order(StringComparer.Ordinal));

        // Everything in the folder, hidden files included, searched as plain text.
        foreach (var file in Directory.EnumerateFiles(temp.Logbook, "*", SearchOption.AllDirectories).Where(file => Path.GetFileName(file) is not (".lock" or "nobody.html")))
        {
            var text = File.ReadAllText(file);
            foreach (var trace in new[] { "Ada", "ADA", "Инвентед", "a1,", ",a1", "\"a1\"", "50.1", "61.3", "cold" }) Assert.False(text.Contains(trace, StringComparison.Ordinal), $"{file} still holds '{trace}':\n{text}");
        }

        Assert.Equal(["a2"], logbook.Squad.Athletes.Select(athlete => athlete.Id));
        Assert.Null(logbook.LastAccept);
        Assert.Throws<InvalidOperationException>(logbook.UndoLastAccept);
        logbook.Reload();
        Assert.Equal(["s2"], logbook.Squad.Sessions.Select(session => session.Id));
        Assert.Equal("(removed)'s watch", logbook.Squad.Sessions[0].Timer);
        Assert.Equal(["a2"], logbook.Squad.Blocks[0].Members);
        Assert.Equal(["h2"], logbook.HeldRows.Select(row => row.Id));
        var draft = Assert.Single(logbook.Drafts);
        Assert.Equal(["2031-03-11", "49"], draft.Cells.Select(cell => cell.Text));
    }

    [Fact]
    public void What_notebooks_showed_of_the_person_goes_and_those_whose_text_names_them_are_listed()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        var name = logbook.Squad.Athlete("a1").DisplayName;
        Directory.CreateDirectory(logbook.NotebooksFolder);
        var cell = $$"""{ "cell_type": "code", "id": "one", "metadata": { "kept": 1 }, "source": "1 + 1", "execution_count": 3, "outputs": [{ "output_type": "stream", "name": "stdout", "text": "{{name}}" }] }""";
        File.WriteAllText(Path.Combine(logbook.NotebooksFolder, "shown.ipynb"), $$"""{ "cells": [{{cell}}], "metadata": {}, "nbformat": 4, "nbformat_minor": 5 }""");
        File.WriteAllText(Path.Combine(logbook.NotebooksFolder, "written.ipynb"), $$"""{ "cells": [{{cell.Replace("1 + 1", $"// {name}", StringComparison.Ordinal)}}], "metadata": {}, "nbformat": 4, "nbformat_minor": 5 }""");

        var report = logbook.RemovePerson("a1");

        Assert.Contains("notebooks/shown.ipynb", report.ErasedFiles);
        Assert.Contains("notebooks/written.ipynb", report.UnsearchedFiles);
        var left = File.ReadAllText(Path.Combine(logbook.NotebooksFolder, "shown.ipynb"));
        Assert.DoesNotContain(name, left, StringComparison.Ordinal);
        Assert.Contains("1 + 1", left, StringComparison.Ordinal);
        Assert.Contains("\"kept\": 1", left, StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_of_the_person_alone_goes_with_them_and_does_not_become_the_whole_squads()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        logbook.Commit(new LogbookChange("own block") { Blocks = [new TrainingBlock("b3", "Own", Invented.Day, Invented.Day) { Members = ["a1"] }] });
        logbook.RemovePerson("a1");
        Assert.Equal(["b1", "b2"], logbook.Squad.Blocks.Select(block => block.Id));
        Assert.Empty(logbook.Exports); // The only one showed nobody else.
    }

    [Fact]
    public void Somebody_unknown_cannot_be_removed()
    {
        using var temp = new TempFolder();
        using var logbook = Invented.Filled(temp);
        Assert.Throws<ArgumentException>(() => logbook.RemovePerson("a9"));
    }

    private static void FillWithTraces(TempFolder temp, Logbook logbook)
    {
        logbook.Commit(new LogbookChange("traces of Ada Invented")
        {
            Sessions = [Invented.BoFirst with { Timer = "ada invented's watch" }],
            ImportCopies = [new ImportCopy("by-surname.xlsx", Zip("xl/sharedStrings.xml", "<sst><si><t>Invented, </t></si><si><t>ADA</t></si></sst>")), new ImportCopy("others.csv", "Name,Set 1\nBo,49\n"u8.ToArray())],
        });
        logbook.Backup(temp.At("club.zip"));
        Directory.CreateDirectory(Path.Combine(logbook.ReportsFolder, "2031-03-05-slowdown"));
        File.WriteAllText(Path.Combine(logbook.ReportsFolder, "2031-03-05-slowdown", "report.html"), "<h1>Why does AI slow?</h1>");
        File.WriteAllBytes(Path.Combine(logbook.ReportsFolder, "2031-03-05-slowdown", "figure.png"), [0x89, 0x50, 0, 1]);
        File.WriteAllText(Path.Combine(logbook.ReportsFolder, "entities.html"), "<td>&#1048;нвентед,</td> <td>Ада</td>");
        File.WriteAllText(Path.Combine(logbook.ReportsFolder, "escaped.ipynb"), "{\"text\": \"\\u0041da Invented\"}");
        File.WriteAllText(Path.Combine(logbook.ReportsFolder, "nobody.html"), "<p>MAIN AIR a10 Adam Inventedson</p>");
        File.WriteAllBytes(Path.Combine(logbook.ReportsFolder, "photo.png"), [0x89, 0x50, 0, 1]);
        var draft = logbook.StartDraft();
        draft.Type("", "test date", "2031-03-11");
        draft.Type("", "timer", "Ada I.");
        draft.Type("a1", "set 1", "50.1");
        draft.Type("a2", "set 1", "49");
    }

    private static byte[] Zip(string name, string text)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create))
        {
            using var entry = new StreamWriter(archive.CreateEntry(name).Open());
            entry.Write(text);
        }

        return bytes.ToArray();
    }
}
