using System.Globalization;

namespace SquadAnalytics.Sets;

/// <summary>One candidate shape of a set profile.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="AfterSet">The set b of a step, a hinge or a jump; null for the others.</param>
public sealed record ProfileShape(ShapeKind Kind, int? AfterSet = null)
{
    /// <summary>The shape in words.</summary>
    public override string ToString() => Kind switch
    {
        ShapeKind.Even => "even",
        ShapeKind.Linear => "steady drift",
        ShapeKind.Quadratic => "curved",
        ShapeKind.Step => string.Create(CultureInfo.InvariantCulture, $"step after set {AfterSet}"),
        ShapeKind.Hinge => string.Create(CultureInfo.InvariantCulture, $"drift from set {AfterSet} on"),
        ShapeKind.LinearWithStep => string.Create(CultureInfo.InvariantCulture, $"steady drift with a jump after set {AfterSet}"),
        _ => "every set its own level",
    };
}
