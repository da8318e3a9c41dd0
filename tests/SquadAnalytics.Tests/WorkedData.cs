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
