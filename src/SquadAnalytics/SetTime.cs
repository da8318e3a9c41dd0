using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>The work time of one set, or the reason why there is none.</summary>
public sealed record SetTime
{
    /// <summary>A timed set.</summary>
    /// <param name="set">Number of the set, from 1.</param>
    /// <param name="work">Work time: from the start signal to the finish; above 0 s.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1, or the time is not above 0.</exception>
    public SetTime(int set, Seconds work)
        : this(set, work, SetStatus.Timed) => Require.Positive(work.Value, nameof(work));

    /// <summary>A set without a time.</summary>
    /// <param name="set">Number of the set, from 1.</param>
    /// <param name="status">Why there is no time; not <see cref="SetStatus.Timed"/>.</param>
    /// <exception cref="ArgumentException">The status says timed.</exception>
    public SetTime(int set, SetStatus status)
        : this(set, null, status)
    {
        if (status == SetStatus.Timed) throw new ArgumentException("A timed set needs its work time.", nameof(status));
    }

    private SetTime(int set, Seconds? work, SetStatus status)
    {
        Set = Require.AtLeast(1, set);
        Work = work;
        Status = status;
    }

    /// <summary>Number of the set, from 1.</summary>
    public int Set { get; }

    /// <summary>Work time, or null where the set was not timed.</summary>
    public Seconds? Work { get; }

    /// <summary>What is known of the set.</summary>
    public SetStatus Status { get; }

    /// <summary>The time, or the status in words.</summary>
    public override string ToString() => Work?.ToString() ?? Status.ToString();
}
