using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>A dated stretch of training with one stated emphasis.</summary>
public sealed record TrainingBlock
{
    /// <summary>Makes a block.</summary>
    /// <param name="id">Its id, unique in the logbook.</param>
    /// <param name="name">Its name.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day; not before the first.</param>
    /// <exception cref="ArgumentOutOfRangeException">The last day lies before the first.</exception>
    public TrainingBlock(string id, string name, DateOnly from, DateOnly to)
    {
        Id = Require.Text(id);
        Name = Require.Text(name);
        if (to < from) throw new ArgumentOutOfRangeException(nameof(to), to, $"Block '{name}' must not end before it begins.");
        From = from;
        To = to;
    }

    /// <summary>Its id, unique in the logbook.</summary>
    public string Id { get; }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>First day.</summary>
    public DateOnly From { get; }

    /// <summary>Last day.</summary>
    public DateOnly To { get; }

    /// <summary>What the block stressed, for example <c>strength endurance</c>.</summary>
    public string? Emphasis { get; init; }

    /// <summary>Ids of the members; empty means the whole squad.</summary>
    public IReadOnlyList<string> Members { get; init; } = [];

    /// <summary>Whether the dates were chosen after the results were seen.</summary>
    public bool DefinedAfterData { get; init; }

    /// <summary>Whether the block covers a date.</summary>
    public bool Covers(DateOnly date) => date >= From && date <= To;

    /// <summary>Whether an athlete belongs to the block.</summary>
    public bool Includes(string athleteId) => Members.Count == 0 || Members.Contains(athleteId);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
