using System.Globalization;

namespace SquadAnalytics.Sets;

/// <summary>Whether an athlete slows after a set, over several sessions. Positive = slower later.</summary>
public sealed record LateSlowdownResult
{
    /// <summary>The set b: sets 1 to b are early, the others late.</summary>
    public required int AfterSet { get; init; }

    /// <summary>Whether b was named in advance or found by searching.</summary>
    public required BreakChoice Choice { get; init; }

    /// <summary>Seconds, or logarithms reported as percent.</summary>
    public required Scale Scale { get; init; }

    /// <summary>Late contrast c: mean of the later sets minus mean of the earlier ones.</summary>
    public required Estimate LateContrast { get; init; }

    /// <summary>Kink contrast κ: the part of c that a steady drift does not explain.</summary>
    public required Estimate KinkContrast { get; init; }

    /// <summary>One-sided p-value of c &gt; 0: of the t test where b was named, of the sign flips, search included, where it was found.</summary>
    public required Estimate LatePValue { get; init; }

    /// <summary>One-sided p-value of κ &gt; 0, in the same way.</summary>
    public required Estimate KinkPValue { get; init; }

    /// <summary>The contrasts of each session, by date.</summary>
    public required IReadOnlyList<SessionContrast> Sessions { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>Whether the later sets are slower at the level asked for.</summary>
    public bool IsSlowerLate => LatePValue.Value <= OneSided;

    /// <summary>Whether they are slower by more than a steady drift explains, at the level asked for.</summary>
    public bool IsMoreThanSteadyDrift => KinkPValue.Value <= OneSided;

    /// <summary>Whether "slows after set b" may be said: slower late, and more abruptly than a steady drift.</summary>
    public bool SlowsAfterSet => IsSlowerLate && IsMoreThanSteadyDrift;

    private double OneSided => LateContrast.ConfidenceLevel!.Value.Alpha / 2;

    /// <summary>Both contrasts in one line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"After set {AfterSet} ({(Choice == BreakChoice.NamedInAdvance ? "named in advance" : "found by search")}, {Sessions.Count} sessions): late contrast {LateContrast}; beyond a steady drift {KinkContrast}");
}
