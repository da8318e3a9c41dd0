using System.Globalization;
using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Counts false alarms, coverage and power of the analyses on data whose truth is known.</summary>
internal sealed class ErrorRatesJob : Job
{
    private const int FullRuns = 10_000;

    public override string Name => "error-rates";

    public override string Summary => "False positives, coverage of intervals and power of the analyses, by simulation.";

    public override string Usage => """
        error-rates [--runs N] [--slow-runs N] [--seed S] [--threads N] [--only WORD] [--out FILE]
          --runs       runs of experiments whose fit takes under 5 ms (default 10000)
          --slow-runs  runs of the others (default 2000)
          --only       experiments whose setting contains the word
          --out        also writes the table to a file
        The exit code is 1 where a rate is more than 2 percentage points from what is promised.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var runs = Number(arguments, "--runs", FullRuns);
        var slowRuns = Number(arguments, "--slow-runs", FullRuns / 5);
        var seed = Number(arguments, "--seed", 20310206);
        var threads = Number(arguments, "--threads", Environment.ProcessorCount);
        var only = Option(arguments, "--only") ?? "";
        var rates = new List<Rate>();
        foreach (var experiment in ErrorRates.Experiments.Where(experiment => experiment.Setting.Contains(only, StringComparison.Ordinal)))
        {
            var count = experiment.IsSlow ? slowRuns : runs;
            var found = experiment.Run(count, seed, threads);
            foreach (var rate in found) Console.WriteLine(rate.Row);
            rates.AddRange(found);
        }

        if (Option(arguments, "--out") is { } file)
            File.WriteAllText(file, RateTable.Of("Error rates, coverage and power", string.Join(' ', ["error-rates", .. arguments]), seed, rates));
        var off = rates.Where(rate => !rate.Keeps).ToList();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rates.Count} rates, {off.Count} more than 2 percentage points off."));
        return off.Count == 0 ? 0 : 1;
    }

    private static int Number(IReadOnlyList<string> arguments, string option, int otherwise) =>
        Option(arguments, option) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : otherwise;
}
