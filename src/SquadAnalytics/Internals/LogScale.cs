namespace SquadAnalytics.Internals;

/// <summary>Natural logarithms of times, the scale on which effects are percentages.</summary>
internal static class LogScale
{
    public static double[] Of(IEnumerable<double> seconds) => [.. seconds.Select(time => Math.Log(time))];

    /// <summary>The times of a session on a scale.</summary>
    public static double[] Of(Session session, Scale scale) => scale == Scale.Log ? Of(session.TimesSeconds) : [.. session.TimesSeconds];
}
