namespace SquadAnalytics.Tests;

/// <summary>Invented athletes and times on which the worked numbers of the tests were computed in R 4.2.2.</summary>
internal static class WorkedData
{
    private static readonly DateOnly FirstTest = new(2031, 1, 7);

    /// <summary>A circuit of four stations, five sets on a 120-second start interval.</summary>
    public static Protocol Circuit { get; } = new("quay-v1", "Quay circuit", [new Station("burpees", 8), new Station("squats", 15), new Station("press-ups", 12), new Station("lunges", 16)], 5, new Seconds(120));

    /// <summary>One athlete, six sessions of five sets.</summary>
    public static IReadOnlyList<Session> SixSessions { get; } = Sessions(
        [62.4, 63.1, 64.0, 69.2, 70.3],
        [61.8, 62.9, 63.2, 67.5, 69.8],
        [63.0, 62.2, 64.5, 66.9, 70.9],
        [60.9, 62.0, 63.8, 68.4, 68.8],
        [61.5, 62.8, 62.6, 66.2, 69.1],
        [60.8, 61.9, 63.1, 67.7, 67.9]);

    /// <summary>The first of the six sessions.</summary>
    public static Session FirstSession => SixSessions[0];

    /// <summary>Eight athletes, four weekly totals each (in session order of weeks, then athletes).</summary>
    public static IReadOnlyList<Session> EightAthletes { get; } = Weekly(
        [329.0, 325.2, 327.1, 322.9], [298.4, 301.0, 296.2, 294.8], [356.1, 349.5, 352.0, 345.3], [312.7, 309.9, 313.5, 306.4],
        [341.0, 344.6, 337.2, 338.8], [285.3, 283.1, 286.0, 281.7], [367.9, 358.8, 361.4, 355.0], [320.5, 322.0, 315.9, 317.3]);

    /// <summary>Weekly sessions of several athletes B1, B2, ... whose totals are given; NaN where the athlete was absent. The total is spread evenly over the sets.</summary>
    public static IReadOnlyList<Session> Weekly(params double[][] totals) =>
        [.. totals.SelectMany((row, athlete) => row.Select((total, week) => (total, week)).Where(cell => !double.IsNaN(cell.total)).Select(cell => Total(cell.total, cell.week, $"B{athlete + 1}")))];

    /// <summary>One session with a total, spread evenly over five sets.</summary>
    public static Session Total(double total, int week = 0, string athlete = "B1") => One([total / 5, total / 5, total / 5, total / 5, total / 5], week, athlete);

    /// <summary>Weekly sessions of one athlete.</summary>
    public static IReadOnlyList<Session> Sessions(params double[][] times) =>
        [.. times.Select((row, week) => One(row, week))];

    /// <summary>One session of one athlete with the circuit, cut to the number of times given.</summary>
    public static Session One(double[] times, int week = 0, string athlete = "a1", Protocol? protocol = null) =>
        Session.FromTimes($"{athlete}-w{week}", athlete, FirstTest.AddDays(7 * week), protocol ?? (times.Length == Circuit.Sets ? Circuit : WithSets(times.Length)), times);

    /// <summary>The circuit with another number of sets.</summary>
    public static Protocol WithSets(int sets, double? startInterval = 120) =>
        new($"quay-{sets}", "Quay circuit", Circuit.Stations, sets, startInterval is { } interval ? new Seconds(interval) : null);
}
