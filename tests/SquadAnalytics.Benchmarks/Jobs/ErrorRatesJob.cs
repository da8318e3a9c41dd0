using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Counts false alarms, coverage and power of the analyses on data whose truth is known.</summary>
internal sealed class ErrorRatesJob : Job
{
    private const int FullRuns = 10_000;

    public override string Name => "error-rates";

    public override string Summary => "False positives, coverage of intervals and power of the analyses, by simulation.";

    public override string Usage => """
        error-rates [--runs N] [--slow-runs N] [--seed S] [--threads N] [--level PERCENT] [--only WORD] [--out FILE]
          --runs       runs of experiments whose fit takes under 5 ms (default 10000)
          --slow-runs  runs of the others (default 2000)
          --level      confidence level of the intervals whose coverage is counted (default 90)
          --only       experiments whose setting contains the word
          --out        also writes the table to a file
        The exit code is 1 where a rate is more than 2 percentage points from what is promised.
        """;

    public override int Run(IReadOnlyList<string> arguments) =>
        SimulationRun.Do("Error rates, coverage and power", ErrorRates.Experiments, Name, arguments, FullRuns, FullRuns / 5);
}
