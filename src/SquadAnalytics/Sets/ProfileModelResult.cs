using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>The set profile of several sessions, of one athlete or several, in one model. Positive = slower.</summary>
public sealed record ProfileModelResult
{
    /// <summary>The set b.</summary>
    public required int AfterSet { get; init; }

    /// <summary>Each set against the first, in percent, from set 2 on.</summary>
    public required IReadOnlyList<Estimate> SetsAgainstFirst { get; init; }

    /// <summary>Mean of the sets after b minus mean of the others, in percent.</summary>
    public required Estimate LateContrast { get; init; }

    /// <summary>The part of it that a steady drift does not explain, in percent.</summary>
    public required Estimate KinkContrast { get; init; }

    /// <summary>Standard deviation between athletes of the late effect d, in percent; refused below 6 athletes with 4 sessions, or where athletes showed no difference.</summary>
    public required Answer<Estimate> LateSpread { get; init; }

    /// <summary>Standard deviation between athletes of the level, in percent, or a refusal with one athlete.</summary>
    public required Answer<Estimate> AthleteSpread { get; init; }

    /// <summary>Standard deviation between sessions of an athlete, in percent.</summary>
    public required Estimate SessionSpread { get; init; }

    /// <summary>Standard deviation of a set, in percent.</summary>
    public required Estimate SetNoise { get; init; }

    /// <summary>One row per athlete, by id; the late effect refuses where the model has none of its own.</summary>
    public required IReadOnlyList<AthleteLateEffect> Athletes { get; init; }

    /// <summary>The model as it was fitted, on natural logarithms.</summary>
    public required MixedFit Model { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => LateContrast.Notes;

    /// <summary>The late contrast and what it rests on.</summary>
    public override string ToString() => FormattableString.Invariant($"after set {AfterSet}: {LateContrast} ({Athletes.Count} athletes, {Selection.Sessions.Count} sessions)");
}
