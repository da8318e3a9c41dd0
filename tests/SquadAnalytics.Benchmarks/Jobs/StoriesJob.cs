using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Draws the sample squad anew and counts how often its stories are found.</summary>
internal sealed class StoriesJob : Job
{
    private const int Squads = 200;

    public override string Name => "stories";

    public override string Summary => "How often the stories built into the sample squad are found when it is drawn anew.";

    public override string Usage => """
        stories [--runs N] [--seed S] [--threads N] [--out FILE]
          --runs  squads to draw (default 200)
          --out   also writes the table to a file
        The exit code is 1 where a rate is more than 2 percentage points from what is promised.
        """;

    public override int Run(IReadOnlyList<string> arguments) =>
        SimulationRun.Do("Stories of the sample squad", [new StoriesExperiment()], Name, arguments, Squads, Squads);
}
