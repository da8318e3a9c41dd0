namespace SquadAnalytics.SampleSquad;

/// <summary>What was built into a generated squad.</summary>
/// <param name="Scenario">The scenario with its seed and effect sizes.</param>
/// <param name="Boxers">What was drawn for each boxer.</param>
/// <param name="Sessions">What each session's total would have been without noise.</param>
public sealed record SampleTruth(SampleScenario Scenario, IReadOnlyList<BoxerTruth> Boxers, IReadOnlyList<SessionTruth> Sessions)
{
    /// <summary>The boxer who breaks late, with the story.</summary>
    public BoxerTruth LateBreaker => The<LateBreak>();

    /// <summary>The boxer who starts too fast.</summary>
    public BoxerTruth FastStarter => The<FastStart>();

    /// <summary>The boxer whose times are noise around one level.</summary>
    public BoxerTruth NoiseOnly => The<OnlyNoise>();

    /// <summary>The boxer who improves all season.</summary>
    public BoxerTruth Improver => The<Improvement>();

    /// <summary>What was drawn for one boxer.</summary>
    public BoxerTruth Of(string athleteId) => Boxers.First(boxer => boxer.AthleteId == athleteId);

    /// <summary>SD of one session total of an adult about the boxer's level from day form and set noise alone, in percent of the total.</summary>
    /// <remarks>√(day form² + set noise² / N): all sets share the day's form, while the noise of N sets averages out.</remarks>
    public double TotalNoisePercent
    {
        get
        {
            var effects = Scenario.Effects;
            return Math.Sqrt((effects.DayFormPercent * effects.DayFormPercent) + (effects.SetNoisePercent * effects.SetNoisePercent / Scenario.MainTest.Protocol.Sets));
        }
    }

    private BoxerTruth The<T>()
        where T : Story => Boxers.First(boxer => boxer.Story is T);
}
