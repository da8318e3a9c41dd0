namespace SquadAnalytics.Sets;

/// <summary>Candidate shapes of a set profile, on logarithms.</summary>
public enum ShapeKind
{
    /// <summary>Every set alike.</summary>
    Even,

    /// <summary>A straight line: a positive split (slower and slower) or a negative one.</summary>
    Linear,

    /// <summary>A parabola: the slowest or the fastest set lies inside.</summary>
    Quadratic,

    /// <summary>One level up to set b and another after it.</summary>
    Step,

    /// <summary>Even up to set b, then a line: a break in slope.</summary>
    Hinge,

    /// <summary>A straight line with a jump after set b; a faster last set is an end spurt.</summary>
    LinearWithStep,

    /// <summary>Every set its own mean.</summary>
    Free,
}
