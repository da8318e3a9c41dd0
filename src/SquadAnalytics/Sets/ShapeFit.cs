namespace SquadAnalytics.Sets;

/// <summary>How well one shape fits.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Criterion">Information criterion, smaller is better; a plain number of no meaning by itself.</param>
/// <param name="Behind">How far its criterion lies behind the best one: below 2 indistinguishable, above 6 set aside.</param>
/// <param name="Weight">Akaike weight among the shapes listed, exp(-behind / 2) over their sum.</param>
public sealed record ShapeFit(ProfileShape Shape, Estimate Criterion, Estimate Behind, Estimate Weight)
{
    /// <summary>Shape and distance from the best.</summary>
    public override string ToString() => FormattableString.Invariant($"{Shape}: {Behind.Value:0.00} behind");

    /// <summary>Ranks shapes by criterion, best first.</summary>
    internal static IReadOnlyList<ShapeFit> Ranked(IReadOnlyList<ProfileShape> shapes, IReadOnlyList<double> criteria, int observations, string method)
    {
        var best = criteria.Min();
        var sum = criteria.Sum(criterion => Math.Exp((best - criterion) / 2));
        Estimate Plain(double value, Unit unit, string how) => new(value, unit, observations, how);
        return [.. shapes.Zip(criteria).OrderBy(pair => pair.Second).Select(pair => new ShapeFit(pair.First,
            Plain(pair.Second, Unit.None, method), Plain(pair.Second - best, Unit.None, "criterion minus the best"), Plain(Math.Exp((best - pair.Second) / 2) / sum, Unit.Probability, "Akaike weight")))];
    }
}
