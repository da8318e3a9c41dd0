using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Why one session of five sets gets no shape from its own times: how often criteria pick one. The rates were simulated in R 4.2.2 (20 000 runs).</summary>
/// <param name="noisePercent">Set noise, on the logarithms.</param>
/// <param name="step">A step of the logarithms after set 3; 0 for even pacing.</param>
/// <param name="rates">AIC not even, AICc not even, AIC names the step after set 3, AICc names it: in percent, from R.</param>
internal sealed class OneSessionExperiment(double noisePercent, double step, double[] rates) : Experiment
{
    private const int Sets = 5;
    private static readonly ProfileShape Even = new(ShapeKind.Even);
    private static readonly ProfileShape AfterThree = new(ShapeKind.Step, 3);
    private static readonly IReadOnlyList<ShapeSpace> Spaces = [.. ShapeSpace.Candidates(Sets, withJumps: false).Where(space => space.Shape.Kind is ShapeKind.Even or ShapeKind.Linear or ShapeKind.Step)];

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"one session of its own, noise {noisePercent} %, {(step == 0 ? "even pace" : $"step of {step} in ln t after set 3")}");

    public override IReadOnlyList<Question> Questions =>
    [
        new("AIC picks not even", Promise.Exactly, rates[0] / 100),
        new("AICc picks not even", Promise.Exactly, rates[1] / 100),
        new("AIC names the step after set 3", Promise.Exactly, rates[2] / 100),
        new("AICc names the step after set 3", Promise.Exactly, rates[3] / 100),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var profile = Profiles.CentredBySession([[.. Enumerable.Range(1, Sets).Select(set => (noisePercent / 100 * random.NextNormal()) + (set > 3 ? step : 0))]])[0];
        // Parameters: the level, the shape and σ; AIC charges the search for the set, AICc does not.
        var aic = Spaces.MinBy(space => (Sets * Math.Log(space.Residual(profile) / Sets)) + (2.0 * (space.Parameters + 2)))!.Shape;
        var corrected = Spaces.MinBy(space => InformationCriteria.Aicc(Sets, space.Residual(profile), space.Shape == Even ? 2 : 3))!.Shape;
        return [aic != Even, corrected != Even, aic == AfterThree, corrected == AfterThree];
    }
}
