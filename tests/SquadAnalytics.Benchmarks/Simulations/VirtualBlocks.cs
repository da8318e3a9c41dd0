using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Two training blocks of one squad whose boxers change by different amounts from one to the other.</summary>
/// <param name="Athletes">How many boxers.</param>
/// <param name="Sessions">Sessions of each, half of them in either block.</param>
/// <param name="NoisePercent">Set noise.</param>
/// <param name="ChangePercent">The mean true change from block to block, in percent.</param>
internal sealed record VirtualBlocks(int Athletes, int Sessions, double NoisePercent, double ChangePercent)
{
    private const double ResponsePercent = 1;
    private static readonly DateOnly FirstDay = new(2030, 9, 5);

    /// <summary>The middling boxer.</summary>
    public VirtualBoxer Model { get; } = new() { SetNoisePercent = NoisePercent, DriftPercentPerSet = 0.6 };

    /// <summary>The setting in words.</summary>
    public string Setting => FormattableString.Invariant($"blocks, {Athletes} boxers, {Half} + {Half} sessions, set noise {NoisePercent} %, change {ChangePercent} %");

    /// <summary>The first block.</summary>
    public TrainingBlock First => new("b1", "first", FirstDay, FirstDay.AddDays(7 * Half - 1));

    /// <summary>The second block.</summary>
    public TrainingBlock Second => new("b2", "second", FirstDay.AddDays(7 * Half), FirstDay.AddDays(7 * Sessions));

    /// <summary>Sessions of each boxer in a block.</summary>
    public int Half => Sessions / 2;

    /// <summary>Noise of a session total, as a share.</summary>
    public double Noise => VirtualSquad.NoisePercent(Model) / 100;

    /// <summary>The middling boxer's total, in seconds.</summary>
    public double Total => VirtualSquad.Total(Model);

    /// <summary>The mean change, in seconds. A boxer's total and the change in it are drawn independently, so that it is that of the middling boxer.</summary>
    public double Change => Total * Math.Exp(ResponsePercent * ResponsePercent / 20_000) * Math.Exp(ChangePercent / 100) - Total;

    /// <summary>SD of the boxers' changes of block means, in seconds.</summary>
    public double SpreadOfChanges => Total * Math.Sqrt((ResponsePercent * ResponsePercent / 10_000) + (2 * Noise * Noise / Half));

    /// <summary>Draws all tests, and tells the noise of a test within a block for the boxers drawn: a slower boxer's seconds vary more, so that it depends on who they are.</summary>
    public (IReadOnlyList<Session> Tests, double WithinBlock) Draw(SeededRandom random)
    {
        var boxers = Enumerable.Range(1, Athletes).Select(number => Model with { Id = "a" + number, LevelPercent = random.NextNormal() * VirtualSquad.LevelSpreadPercent }).ToList();
        double[] changes = [.. boxers.Select(_ => (ChangePercent + (ResponsePercent * random.NextNormal())) / 100)];
        IReadOnlyList<Session> tests = [.. boxers.SelectMany((boxer, index) => boxer.Sessions(random, Sessions, session => session < Half ? 1 : Math.Exp(changes[index])))];
        return (tests, Noise * Math.Sqrt(boxers.Select((boxer, index) => Math.Pow(VirtualSquad.Total(boxer), 2) * (1 + Math.Exp(2 * changes[index])) / 2).Average()));
    }

    /// <summary>The question whether something is announced, whose rate is promised where there is no change.</summary>
    public Question Alarm(string text, Promise promise, double rate) => ChangePercent == 0 ? new Question(text, promise, rate) : new Question(text);
}
