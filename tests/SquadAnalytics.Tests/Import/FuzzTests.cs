using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Tests.Import;

public sealed class FuzzTests
{
    // A fixed-seed sample of the benchmark job "import-fuzz", which imports 100,000 damaged files.
    [Fact]
    public void Damaged_files_never_crash_the_import_and_every_row_is_accounted_for() =>
        Assert.Empty(Enumerable.Range(1, 1000).Select(ImportFuzz.Problem).OfType<string>().Take(3));

    [Fact]
    public void Damage_changes_files_and_is_the_same_for_the_same_seed()
    {
        Assert.Equal(MutatedFile.Make(7).Content, MutatedFile.Make(7).Content);
        Assert.True(Enumerable.Range(1, 40).Select(MutatedFile.Make).Count(file => !file.Content.AsSpan().SequenceEqual(ClipboardFiles.All.Single(original => original.Name == file.Name).Content)) > 35);
    }
}
