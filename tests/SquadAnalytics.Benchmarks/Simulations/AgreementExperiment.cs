using System.Globalization;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Agreement of a squad's last two tests: coverage of what is announced.</summary>
/// <param name="sessions">Sessions of each boxer.</param>
/// <param name="noisePercent">Set noise.</param>
internal sealed class AgreementExperiment(int sessions, double noisePercent) : Experiment
{
    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"agreement, squad of {VirtualSquad.Size}, last two of {sessions} sessions, set noise {noisePercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("bias of two tests"),
        Interval("upper limit of agreement"),
        Interval("mean change of a pair of tests"),
        Interval("typical error of a pair of tests"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var boxers = VirtualSquad.Draw(random, noisePercent);
        var tests = boxers.Select(boxer => boxer.Sessions(random, sessions)).ToList();
        var options = new TypicalErrorOptions { Level = Level, Selection = SelectionOptions.KeepAll with { From = tests[0][^2].Date } };
        IReadOnlyList<Session> all = [.. tests.SelectMany(own => own)];
        var agreement = LimitsOfAgreement.Fit(all, options).GetOrThrow();
        var pair = ConsecutivePairs.Fit(all, options).GetOrThrow().Pairs[0];
        var noise = Math.Sqrt(boxers.Average(boxer => Math.Pow(VirtualSquad.Total(boxer), 2))) * VirtualSquad.NoisePercent(boxers[0]) / 100;
        return
        [
            Covers(agreement.Bias, 0),
            Covers(agreement.Upper, 1.96 * Math.Sqrt(2) * noise),
            Covers(pair.MeanChange.GetOrThrow(), 0),
            Covers(pair.TypicalError.GetOrThrow(), noise),
        ];
    }
}
