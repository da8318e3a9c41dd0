using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Imports damaged files by the hundred thousand.</summary>
internal sealed class ImportFuzzJob : Job
{
    public override string Name => "import-fuzz";

    public override string Summary => "Imports damaged files: no crash, no wrong culture, every row accounted for.";

    public override string Usage => "import-fuzz [--files 100000] [--seed 1]";

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

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{files} damaged files from seed {seed}: {problems} problems, {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s"));
        return problems == 0 ? 0 : 1;
    }
}
