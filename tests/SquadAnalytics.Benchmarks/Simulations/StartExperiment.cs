using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Starting too fast: coverage of the slope and false alarms.</summary>
/// <param name="sessions">Sessions of the boxer.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="spreadPercent">SD of the starts.</param>
/// <param name="slope">The true slope of the later sets on the first.</param>
/// <param name="formPercent">SD of the day's form, which makes fast starts and fast later sets go together: what the slope is then is not promised, only that no cost is made up.</param>
internal sealed class StartExperiment(int sessions, double noisePercent, double spreadPercent, double slope, double formPercent) : Experiment
{
    private readonly VirtualBoxer _boxer = new() { SetNoisePercent = noisePercent, DriftPercentPerSet = 0.6, DayFormPercent = formPercent, StartSpreadPercent = spreadPercent, StartSlope = slope };

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"starts, {sessions} sessions, set noise {noisePercent} %, starts vary by {spreadPercent} %, slope {slope}, day form {formPercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("slope", formPercent == 0 ? Promise.Exactly : Promise.None),
        slope == 0 ? new("faster starts cost later", Promise.AtMost, 0.05) : new("faster starts cost later"),
        new("refused"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var tests = _boxer.Sessions(random, sessions);
        StartingTooFast.Fit(tests, new StartingTooFastOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var fit);
        return [Covers(fit?.Slope, slope), fit?.FasterStartsCostLater, fit is null];
    }
}
