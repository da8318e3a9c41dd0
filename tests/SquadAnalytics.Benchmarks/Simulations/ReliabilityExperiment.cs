using System.Globalization;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Typical error and intraclass correlation of a squad: coverage of their intervals.</summary>
/// <param name="sessions">Sessions of each boxer.</param>
/// <param name="noisePercent">Set noise.</param>
internal sealed class ReliabilityExperiment(int sessions, double noisePercent) : Experiment
{
    public override bool IsSlow => true;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"reliability, squad of {VirtualSquad.Size}, {sessions} sessions, set noise {noisePercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("typical error in percent"),
        Interval("typical error in seconds"),
        Interval("ICC(A,1)"),
        Interval("ICC(C,1)"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var boxers = VirtualSquad.Draw(random, noisePercent);
        // Here every level is drawn: the correlation is about athletes like these, not about one fixed among them.
        boxers = [boxers[0] with { LevelPercent = random.NextNormal() * VirtualSquad.LevelSpreadPercent }, .. boxers.Skip(1)];
        IReadOnlyList<Session> tests = [.. boxers.SelectMany(boxer => boxer.Sessions(random, sessions))];
        TypicalError.Fit(tests, new TypicalErrorOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var error);
        IntraclassCorrelation.Fit(tests, new IntraclassCorrelationOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var correlation);
        var noise = VirtualSquad.NoisePercent(boxers[0]);
        var ratio = VirtualSquad.LevelSpreadPercent / noise;
        var truth = ratio * ratio / (1 + (ratio * ratio));
        var squares = boxers.Average(boxer => Math.Pow(VirtualSquad.Total(boxer) * noise / 100, 2));
        var logTruth = Percent.FromLog(noise / 100).Value;
        return
        [
            Covers(Variation(error), logTruth),
            Covers(error?.Estimate, Math.Sqrt(squares)),
            Covers(correlation?.Agreement, truth),
            Covers(correlation?.Consistency, truth),
        ];
    }

    private static Estimate? Variation(TypicalErrorResult? error) => error is not null && error.Variation.TryGet(out var variation) ? variation : null;
}
