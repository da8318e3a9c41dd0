namespace SquadAnalytics.Sets;

/// <summary>Mean station times of the early and the late sets of one session; the last column holds transitions and unassigned time.</summary>
internal sealed record StationTable(string SessionId, double[] Early, double[] Late)
{
    /// <summary>Whole early set: stations and transitions together.</summary>
    public double EarlySet => Early.Sum();

    /// <summary>Whole late set.</summary>
    public double LateSet => Late.Sum();

    /// <summary>Builds the table of a complete session, or null where a station time is missing.</summary>
    public static StationTable? Of(Session session, int afterSet)
    {
        var stations = session.Protocol.Stations.Count;
        var sets = session.Protocol.Sets;
        if (stations == 0) return null;
        var times = new double?[sets, stations];
        foreach (var time in session.Stations)
        {
            if (time.Set <= sets && time.Station <= stations) times[time.Set - 1, time.Station - 1] = time.Work?.Value;
        }

        double[] early = new double[stations + 1], late = new double[stations + 1];
        for (var k = 0; k < sets; k++)
        {
            var (means, count) = k < afterSet ? (early, afterSet) : (late, sets - afterSet);
            double assigned = 0;
            for (var j = 0; j < stations; j++)
            {
                if (times[k, j] is not { } split) return null;
                means[j] += split / count;
                assigned += split;
            }

            means[stations] += (session.TimesSeconds[k] - assigned) / count;
        }

        return new StationTable(session.Id, early, late);
    }

    /// <summary>Whether the splits of a set exceed its time by more than the tolerance: then one of the figures is wrong.</summary>
    public static bool IsContradictory(Session session, double toleranceSeconds) =>
        session.Stations.Where(time => time.Work is not null && time.Set <= session.Protocol.Sets).GroupBy(time => time.Set)
            .Any(set => set.Sum(time => time.Work!.Value.Value) - session.TimesSeconds[set.Key - 1] > toleranceSeconds + 1e-9);
}
