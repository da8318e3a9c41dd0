using System.Globalization;

namespace SquadAnalytics.Sets;

/// <summary>One set on the rolling clock.</summary>
/// <param name="Set">Number of the set, from 1.</param>
/// <param name="Start">When it started, from the first start signal.</param>
/// <param name="Work">Its work time.</param>
/// <param name="Finish">When it was finished.</param>
/// <param name="Late">How long after its start signal it started: 0 unless the set before ran over.</param>
public sealed record ClockSet(int Set, Seconds Start, Seconds Work, Seconds Finish, Seconds Late)
{
    /// <summary>Rest until the next set: 0 where the set ran up to or over the next start signal; null after the last set.</summary>
    public Seconds? Rest { get; init; }

    /// <summary>Rest lost up to here against repeating the first set, Σ (t_j - t_1); null after the last set.</summary>
    public Seconds? RestLost { get; init; }

    /// <summary>Work and rest, for example <c>set 2: work 63.10 s, rest 56.90 s</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"set {Set}: work {Work}, rest {(Rest is { } rest ? rest.ToString() : "none after the last set")}");
}
