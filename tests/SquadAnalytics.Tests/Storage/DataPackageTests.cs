using System.Text.Json;
using CsCheck;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Storage;

public sealed class DataPackageTests
{
    /// <remarks>Frictionless Data Package and Tabular Data Resource, version 1: name in lower case, resources with path and schema; fields with name and one of the types of Table Schema.</remarks>
    [Fact]
    public void Every_table_is_described_column_by_column_in_the_order_of_its_file()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        using var package = JsonDocument.Parse(File.ReadAllBytes(temp.At("logbook/datapackage.json")));
        var root = package.RootElement;
        Assert.Equal("tabular-data-package", root.GetProperty("profile").GetString());
        Assert.Matches("^[a-z0-9._-]+$", root.GetProperty("name").GetString());
        var described = new List<string>();
        foreach (var resource in root.GetProperty("resources").EnumerateArray())
        {
            var path = resource.GetProperty("path").GetString()!;
            described.Add(path);
            var schema = resource.GetProperty("schema");
            var fields = schema.GetProperty("fields").EnumerateArray().ToList();
            var names = fields.Select(field => field.GetProperty("name").GetString()!).ToList();
            Assert.Equal(File.ReadLines(temp.At($"logbook/{path}")).First(), string.Join(',', names));
            Assert.All(fields, field => Assert.Contains(field.GetProperty("type").GetString(), new[] { "string", "date", "datetime", "number", "integer", "boolean" }));
            if (schema.TryGetProperty("primaryKey", out var key)) Assert.All(key.EnumerateArray(), part => Assert.Contains(part.GetString(), names));
        }

        Assert.Equal(Directory.GetFiles(temp.Logbook, "*.csv").Select(Path.GetFileName).Order(StringComparer.Ordinal), described.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Names_of_columns_with_units_carry_the_unit_that_is_described()
    {
        using var temp = new TempFolder();
        Invented.Filled(temp).Dispose();
        using var package = JsonDocument.Parse(File.ReadAllBytes(temp.At("logbook/datapackage.json")));
        var units = package.RootElement.GetProperty("resources").EnumerateArray()
            .SelectMany(resource => resource.GetProperty("schema").GetProperty("fields").EnumerateArray())
            .Where(field => field.TryGetProperty("unit", out _)).DistinctBy(field => field.GetProperty("name").GetString())
            .ToDictionary(field => field.GetProperty("name").GetString()!, field => field.GetProperty("unit").GetString()!, StringComparer.Ordinal);
        Assert.Equal("kg", units["body_mass_kg"]);
        Assert.Equal("s", units["work_s"]);
        Assert.Equal("h", units["sleep_h"]);
        Assert.Equal("min", units["training_min"]);
        Assert.Equal("°C", units["temperature_c"]);
    }

    /// <remarks>The characters are those that OWASP's page on CSV injection lists.</remarks>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    public void No_text_in_a_file_begins_like_a_formula(string text)
    {
        using var temp = new TempFolder();
        using var logbook = Logbook.Create(temp.Logbook, "Quay");
        logbook.Commit(new LogbookChange("named") { Athletes = [new Athlete("a1", text, "A1")] });
        Assert.Equal($"a1,'{text},A1", File.ReadLines(temp.At("logbook/athletes.csv")).Skip(1).Single()[..(7 + text.Length)]);
        logbook.Reload();
        Assert.Equal(text, logbook.Squad.Athletes[0].DisplayName);
    }

    [Fact]
    public void Any_text_comes_back_exactly()
    {
        using var temp = new TempFolder();
        using var logbook = Logbook.Create(temp.Logbook, "Quay");
        logbook.Commit(new LogbookChange("Ada") { Athletes = [Invented.Ada] });
        string[] signs = ["=", "+", "-", "@", "'", "\"", "\t", "\r", "\n", "\r\n", ",", ";", " ", "a", "Ä", "漢", "𝄞", "\u202E", "\0"];
        var texts = Gen.Int[0, signs.Length - 1].Array[0, 12].Select(chosen => string.Concat(chosen.Select(index => signs[index])) + "x").Array[1, 40];
        texts.Sample(
            notes =>
            {
                logbook.Commit(new LogbookChange("notes") { HealthNotes = [.. notes.Select((text, index) => new HealthNote($"n{index}", "a1", Invented.Day, text))] });
                logbook.Reload();
                Assert.Equal(notes, logbook.HealthNotes.Take(notes.Length).Select(note => note.Text));
            },
            iter: 50);
    }
}
