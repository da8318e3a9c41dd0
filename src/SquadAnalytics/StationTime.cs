using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>The time spent at one station of one set (a split, not the running clock).</summary>
public sealed record StationTime
{
    /// <summary>Makes a station time.</summary>
    /// <param name="set">Number of the set, from 1.</param>
    /// <param name="station">Number of the station in the circuit, from 1.</param>
    /// <param name="work">The split; above 0 s.</param>
    public StationTime(int set, int station, Seconds work)
    {
        Set = Require.AtLeast(1, set);
        Station = Require.AtLeast(1, station);
        Require.Positive(work.Value, nameof(work));
        Work = work;
    }

    /// <summary>Number of the set, from 1.</summary>
    public int Set { get; }

    /// <summary>Number of the station in the circuit, from 1.</summary>
    public int Station { get; }

    /// <summary>The time spent at the station.</summary>
    public Seconds Work { get; }
}
