namespace SquadAnalytics.Sets;

/// <summary>What one station, or the transitions between stations, contributes to the slow-down from the early to the late sets.</summary>
public sealed record StationShare
{
    /// <summary>Number of the station in the circuit, from 1; null for transitions and unassigned time.</summary>
    public required int? Station { get; init; }

    /// <summary>The exercise, or <c>transitions</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Mean time in an early set, in seconds.</summary>
    public required Estimate Early { get; init; }

    /// <summary>Mean time in a late set, in seconds.</summary>
    public required Estimate Late { get; init; }

    /// <summary>Late minus early, in seconds; positive = slower late. These add up exactly to the slow-down of the whole set.</summary>
    public required Estimate Slowdown { get; init; }

    /// <summary>Share of the whole slow-down (1 = all of it), with a Fieller interval.</summary>
    public required Answer<Estimate> Share { get; init; }

    /// <summary>Slow-down relative to the station's own early time, in percent.</summary>
    public required Answer<Estimate> RelativeSlowing { get; init; }

    /// <summary>Seconds beyond what "every station slows by the same percent" would give; these add up to 0.</summary>
    public required Estimate Excess { get; init; }

    /// <summary>One-sided p-value of an excess above 0, adjusted by Holm for all stations and the transitions; null without an interval.</summary>
    public required Estimate? ExcessPValue { get; init; }

    /// <summary>Name, seconds and share.</summary>
    public override string ToString() => $"{Name}: {Slowdown}; share {Share}; beyond even slowing {Excess}";
}
