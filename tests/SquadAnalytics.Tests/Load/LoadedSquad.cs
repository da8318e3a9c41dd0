namespace SquadAnalytics.Tests.Load;

/// <summary>Invented squads with loads and circumstances written down.</summary>
internal static class LoadedSquad
{
    public static readonly DateOnly FirstTest = new(2031, 1, 7);

    /// <summary>Days before weekly tests that sum to the loads given: one training of load/7 a day, RPE 1 times minutes.</summary>
    public static IReadOnlyList<DayContext> DaysBefore(string athlete, params IReadOnlyList<double> weeklyLoads) =>
        [.. weeklyLoads.SelectMany((load, week) => Enumerable.Range(1, 7).Select(back => new DayContext(athlete, FirstTest.AddDays(7 * week - back)) { SessionRpe = 1, Minutes = load / 7 }))];

    /// <summary>Weekly tests of one athlete.</summary>
    public static IReadOnlyList<Session> Tests(string athlete, params IReadOnlyList<double> totals) => [.. totals.Select((total, week) => WorkedData.Total(total, week, athlete))];

    /// <summary>Three athletes, four tests each.</summary>
    public static IReadOnlyList<Session> ThreeAthletes { get; } = [.. Tests("1", 318, 321, 320, 325), .. Tests("2", 300, 303, 307, 304), .. Tests("3", 341, 340, 346, 347)];

    public static IReadOnlyList<DayContext> ThreeAthletesDays { get; } = [.. DaysBefore("1", 2, 4, 3, 6), .. DaysBefore("2", 1, 3, 5, 4), .. DaysBefore("3", 5, 4, 7, 8)];

    /// <summary>Seven athletes, eight tests each, made from sleep and sparring by a rule: see <see cref="SevenDays"/>.</summary>
    public static IReadOnlyList<Session> Seven { get; } =
        [.. Grid.Select(at => WorkedData.Total(300 + 10 * at.I - 0.5 * at.W - 1.2 * (Sleep(at.I, at.W) - 7) + 0.8 * Sparring(at.I, at.W) + ((7 * at.I + 5 * at.W + at.I * at.W) % 11 - 5) / 4.0, at.W, $"s{at.I}") with { TemperatureCelsius = 18 + at.W % 3 })];

    public static IReadOnlyList<DayContext> SevenDays { get; } =
        [.. Grid.Select(at => new DayContext($"s{at.I}", FirstTest.AddDays(7 * at.W)) { SleepHours = Sleep(at.I, at.W), SparringRoundsBefore = Sparring(at.I, at.W), SessionRpe = 7 })];

    private static IEnumerable<(int I, int W)> Grid => Enumerable.Range(0, 7).SelectMany(i => Enumerable.Range(0, 8).Select(w => (i, w)));

    private static double Sleep(int i, int w) => 7 + (3 * i + 2 * w) % 5 / 2.0 - 1 + 0.1 * i;

    private static int Sparring(int i, int w) => (i + 2 * w + w / 3) % 4;
}
