using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>The stable stretch of a season on which chart limits are set and then frozen.</summary>
public sealed record ChartBaseline
{
    /// <summary>Names the stretch.</summary>
    /// <param name="name">Its name, printed with the limits.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day; not before the first.</param>
    /// <exception cref="ArgumentException">The name is empty, or the last day lies before the first.</exception>
    public ChartBaseline(string name, DateOnly from, DateOnly to)
    {
        Name = Require.Text(name);
        if (to < from) throw new ArgumentOutOfRangeException(nameof(to), to, $"Baseline '{name}' must not end before it begins.");
        From = from;
        To = to;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>First day.</summary>
    public DateOnly From { get; }

    /// <summary>Last day.</summary>
    public DateOnly To { get; }

    /// <summary>Whether a date lies in it.</summary>
    public bool Covers(DateOnly date) => date >= From && date <= To;

    /// <summary>Name and dates.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} ({From:yyyy-MM-dd} to {To:yyyy-MM-dd})");
}
