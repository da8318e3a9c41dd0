using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>One session of five sets with the noise of others: the rule's rates against those simulated in R 4.2.2 (40 000 runs).</summary>
/// <param name="others">Sessions that the noise comes from, with 4 degrees of freedom for each after the first.</param>
/// <param name="noisePercent">Set noise, on the logarithms.</param>
/// <param name="step">A step of the logarithms after set 3; 0 for even pacing.</param>
/// <param name="notEven">Percent of runs called not even, from R.</param>
/// <param name="lowest">Percent of runs called not even in which the step after set 3 also fits best, from R; null where R was not asked.</param>
internal sealed class BorrowedNoiseExperiment(int others, double noisePercent, double step, double notEven, double? lowest) : Experiment
{
    private static readonly Protocol Circuit = new("quay", "Quay circuit", [new Station("burpees", 8), new Station("squats", 15)], 5, new Seconds(120));
    private static readonly DateOnly FirstDay = new(2030, 9, 5);

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"borrowed noise, {4 * (others - 1)} degrees of freedom, noise {noisePercent} %, {(step == 0 ? "even pace" : $"step of {step} in ln t after set 3")}");

    public override IReadOnlyList<Question> Questions =>
    [
        new("not even", Promise.Exactly, notEven / 100),
        lowest is { } share ? new("not even, and the step after set 3 fits best", Promise.Exactly, share / 100) : new("not even, and the step after set 3 fits best"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        Session Draw(int number, double jump) => Session.FromTimes("s" + number, "a1", FirstDay.AddDays(number), Circuit, [.. Enumerable.Range(1, 5).Select(set => 60 * Math.Exp((noisePercent / 100 * random.NextNormal()) + (set > 3 ? jump : 0)))]);
        var noise = SetNoise.Fit([.. Enumerable.Range(1, others).Select(number => Draw(number, 0))], new SetNoiseOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var shape = PacingShape.Summarize(Draw(0, step), noise).GetOrThrow();
        return [shape.IsNotEven, shape.IsNotEven && shape.Shapes[0].Shape == new ProfileShape(ShapeKind.Step, 3)];
    }
}
