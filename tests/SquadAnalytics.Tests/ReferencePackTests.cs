using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Tests;

/// <summary>Nothing in the reference pack lies unread. Tests that do not run in parallel run last, when all others have read.</summary>
[Collection(nameof(ReferencePackTests))]
[CollectionDefinition(nameof(ReferencePackTests), DisableParallelization = true)]
public sealed class ReferencePackTests
{
    private static readonly string Tests = TestsFolder();

    /// <summary>Entries that stand beside the values, by their paths.</summary>
    private static readonly string[] NotValues =
    [
        // Words that name the row; the tests go by its place.
        "/(name|term|segment|parameter|var1|var2)$",

        // Words about the data: what NIST fitted, what a sequence was made from.
        "^nist/.*/model$",
        "/sequences/.*/truth$",

        // Quotients of two values that are read: ratios of loads are not offered, and the error that doubles bring is that of their F against the certified one.
        "^monitoring/generated_load/.*/ratio(_coupled|_uncoupled)?$",
        "/relative_error_of_f$",

        // For information: to how many digits R meets the certified values.
        "/reached_by_r/",

        // The working column of the knot, 0 at convergence by construction.
        "/segmented/values/coefficients/3/(Estimate|t value|Pr.*)$",

        // With ties R gives no limits, and those of exactRankTests follow another definition.
        "^robust/shoes/results/signed_rank_(exact|stats)/values/(estimate|lower95|upper95)$",
    ];

    private static IEnumerable<string> Items => Directory.EnumerateFiles(Path.Combine(Tests, "Reference"), "*.json", SearchOption.AllDirectories);

    [Fact]
    public void Every_item_is_named_by_a_test()
    {
        var sources = string.Concat(Directory.EnumerateFiles(Tests, "*.cs", SearchOption.AllDirectories).Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("\\obj\\", StringComparison.Ordinal)).Select(File.ReadAllText));
        Assert.DoesNotContain(Items, item => !sources.Contains($"\"{Path.GetFileNameWithoutExtension(item)}\"", StringComparison.Ordinal) && !sources.Contains($"{Path.GetFileName(item)}\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_data_file_belongs_to_an_item_of_its_folder()
    {
        var data = Items.SelectMany(item => JsonDocument.Parse(File.ReadAllText(item)).RootElement.TryGetProperty("data", out var files) ? files.EnumerateArray().Select(file => Path.Combine(Path.GetDirectoryName(item)!, file.GetString()!)) : []);
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(Tests, "Reference"), "*.csv", SearchOption.AllDirectories).Except(data));
    }

    [Fact]
    public void Every_value_is_read_by_a_test()
    {
        if (!WasEverythingRun) return;
        string[] unread = [.. Items.SelectMany(Values).Where(path => !ReferenceReadings.Contain(path))];
        string[] missed = [.. unread.Where(path => !NotValues.Any(part => Regex.IsMatch(path, part)))];
        Assert.True(missed.Length == 0, string.Join(Environment.NewLine, missed));
        Assert.All(NotValues, part => Assert.Contains(unread, path => Regex.IsMatch(path, part)));
    }

    /// <summary>Whether every other test of the assembly has begun. In a run of a part of them values stay unread through nobody's fault.</summary>
    private static bool WasEverythingRun => typeof(ReferencePackTests).Assembly.GetTypes().Where(type => type != typeof(ReferencePackTests)).SelectMany(type => type.GetMethods())
        .Where(method => method.GetCustomAttribute<FactAttribute>() is { Skip: null }).All(ReferenceReadings.Contain);

    private static IEnumerable<string> Values(string item)
    {
        var folder = Path.GetFileName(Path.GetDirectoryName(item)!);
        return folder == "nbformat" ? [] : ReferenceData.Load(folder, Path.GetFileNameWithoutExtension(item)).GetProperty("results").EnumerateObject().SelectMany(block => block.Value.GetProperty("values").Leaves());
    }

    private static string TestsFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SquadAnalytics.sln"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "tests");
    }
}
