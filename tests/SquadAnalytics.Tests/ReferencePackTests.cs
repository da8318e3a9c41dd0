using System.Text.Json;

namespace SquadAnalytics.Tests;

/// <summary>Nothing in the reference pack lies unread.</summary>
public sealed class ReferencePackTests
{
    private static readonly string Tests = TestsFolder();

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

    private static string TestsFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SquadAnalytics.sln"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "tests");
    }
}
