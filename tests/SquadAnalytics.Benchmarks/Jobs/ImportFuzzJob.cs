using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Imports damaged files by the hundred thousand.</summary>
internal sealed class ImportFuzzJob : Job
{
    public override string Name => "import-fuzz";

    public override string Summary => "Imports damaged files: no crash, no wrong culture, every row accounted for.";

    public override string Usage => """
        import-fuzz [--files 100000] [--seed 1] [--out FILE]
          --out  a file for the table with seeds, commit and machine
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var files = int.Parse(Option(arguments, "--files") ?? "100000", CultureInfo.InvariantCulture);
        var seed = int.Parse(Option(arguments, "--seed") ?? "1", CultureInfo.InvariantCulture);
        var start = Stopwatch.GetTimestamp();
        var problems = 0;
        for (var k = 0; k < files; k++)
        {
            if (ImportFuzz.Problem(seed + k) is not { } problem) continue;
            problems++;
            if (problems <= 20) Console.WriteLine(problem);
        }

        var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{files} damaged files from seed {seed}: {problems} problems, {seconds:0} s"));
        if (Option(arguments, "--out") is { } file) File.WriteAllText(file, Table(files, seed, problems, seconds));
        return problems == 0 ? 0 : 1;
    }

    private static string Table(int files, int seed, int problems, double seconds) => string.Create(CultureInfo.InvariantCulture, $"""
        # Damaged files imported

        Job `import-fuzz --files {files}`, seeds {seed} to {seed + files - 1}, commit {Provenance.Commit()}, {Provenance.Machine()}, {seconds:0} s.
        Each file is read under the invariant culture and under `de-DE` or `tr-TR`. A problem is a crash, another result in the other culture, or a
        row read that was not kept, refused or awaiting a decision.

        | files | problems |
        | ---: | ---: |
        | {files} | {problems} |

        """);
}
