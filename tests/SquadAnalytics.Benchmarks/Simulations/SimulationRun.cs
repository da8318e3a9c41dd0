using System.Globalization;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Runs experiments as a job's arguments say, prints their rates and keeps the table.</summary>
internal static class SimulationRun
{
    private const int DefaultSeed = 20310206;

    /// <summary>Runs, prints, keeps; 1 where a rate is off.</summary>
    public static int Do(string title, IEnumerable<Experiment> experiments, string job, IReadOnlyList<string> arguments, int runs, int slowRuns)
    {
        runs = Number("--runs", runs);
        slowRuns = Number("--slow-runs", Job.Option(arguments, "--runs") is null ? slowRuns : Math.Min(runs, slowRuns));
        var seed = Number("--seed", DefaultSeed);
        var threads = Number("--threads", Environment.ProcessorCount);
        var only = Job.Option(arguments, "--only") ?? "";
        var level = new ConfidenceLevel(Number("--level", 90) / 100.0);
        var rates = new List<Rate>();
        foreach (var experiment in experiments.Where(experiment => experiment.Setting.Contains(only, StringComparison.Ordinal)))
        {
            experiment.Level = level;
            var found = experiment.Run(experiment.IsSlow ? slowRuns : runs, seed, threads);
            foreach (var rate in found) Console.WriteLine(rate.Row);
            rates.AddRange(found);
        }

        if (Job.Option(arguments, "--out") is { } file)
            File.WriteAllText(file, RateTable.Of(title, string.Join(' ', [job, .. arguments]), seed, rates));
        var off = rates.Count(rate => !rate.Keeps);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rates.Count} rates, {off} more than 2 percentage points off."));
        return off == 0 ? 0 : 1;

        int Number(string option, int otherwise) => Job.Option(arguments, option) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : otherwise;
    }
}
