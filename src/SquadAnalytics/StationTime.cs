using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>The time spent at one station of one set (a split, not the running clock), or the reason why there is none.</summary>
public sealed record StationTime
{
    /// <summary>A timed station.</summary>
    /// <param name="set">Number of the set, from 1.</param>
    /// <param name="station">Number of the station in the circuit, from 1.</param>
    /// <param name="work">The split; above 0 s.</param>
    public StationTime(int set, int station, Seconds work)
        : this(set, station, work, SetStatus.Timed) => Require.Positive(work.Value, nameof(work));

    /// <summary>A station without a time.</summary>
    /// <param name="set">Number of the set, from 1.</param>
    /// <param name="station">Number of the station in the circuit, from 1.</param>
    /// <param name="status">Why there is no time; not <see cref="SetStatus.Timed"/>.</param>
    /// <exception cref="ArgumentException">The status says timed.</exception>
    public StationTime(int set, int station, SetStatus status)
        : this(set, station, null, status)
    {
        if (status == SetStatus.Timed) throw new ArgumentException("A timed station needs its work time.", nameof(status));
    }

    private StationTime(int set, int station, Seconds? work, SetStatus status)
    {
        Set = Require.AtLeast(1, set);
        Station = Require.AtLeast(1, station);
        Work = work;
        Status = status;
    }

    /// <summary>Number of the set, from 1.</summary>
    public int Set { get; }

    /// <summary>Number of the station in the circuit, from 1.</summary>
    public int Station { get; }

    /// <summary>The time spent at the station, or null where it was not timed.</summary>
    public Seconds? Work { get; }

    /// <summary>What is known of the station.</summary>
    public SetStatus Status { get; }
}
