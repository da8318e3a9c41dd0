namespace SquadAnalytics.Sets;

/// <summary>The space that a shape spans beside the session's level: an orthonormal basis of centred columns.</summary>
internal sealed class ShapeSpace
{
    private readonly IReadOnlyList<double[]> _basis;

    private ShapeSpace(ProfileShape shape, IReadOnlyList<double[]> basis)
    {
        Shape = shape;
        _basis = basis;
    }

    public ProfileShape Shape { get; }

    /// <summary>Parameters of the shape without the level, one more where b was searched for.</summary>
    public int Parameters => _basis.Count + (Shape.AfterSet is null ? 0 : 1);

    /// <summary>All shapes of n sets; a space that two shapes share is listed once, under the first.</summary>
    public static IReadOnlyList<ShapeSpace> Candidates(int sets, bool withJumps)
    {
        var shapes = new List<ProfileShape> { new(ShapeKind.Even), new(ShapeKind.Linear), new(ShapeKind.Quadratic) };
        for (var b = 1; b < sets; b++) shapes.Add(new ProfileShape(ShapeKind.Step, b));
        for (var b = 2; b <= sets - 2; b++) shapes.Add(new ProfileShape(ShapeKind.Hinge, b));
        for (var b = 2; withJumps && b < sets; b++) shapes.Add(new ProfileShape(ShapeKind.LinearWithStep, b));
        if (withJumps) shapes.Add(new ProfileShape(ShapeKind.Free));
        var kept = new List<ShapeSpace>();
        foreach (var space in shapes.Select(shape => new ShapeSpace(shape, Orthonormal(Columns(shape, sets)))))
        {
            if (!kept.Exists(space.Spans)) kept.Add(space);
        }

        return kept;
    }

    /// <summary>Sum of squares of a centred profile that the shape does not explain.</summary>
    public double Residual(double[] centred) => Remainder(centred).Sum(value => value * value);

    /// <summary>What the shape does not explain of a centred profile.</summary>
    public double[] Remainder(double[] centred)
    {
        var rest = centred.ToArray();
        foreach (var column in _basis) Remove(rest, column);
        return rest;
    }

    private bool Spans(ShapeSpace other) => other._basis.Count == _basis.Count && other._basis.All(column => Residual(column) < 1e-18);

    private static IEnumerable<double[]> Columns(ProfileShape shape, int sets)
    {
        double[] Column(Func<int, double> value) => [.. Enumerable.Range(1, sets).Select(value)];
        double[] line = Column(k => k), step = Column(k => k > shape.AfterSet ? 1 : 0);
        return shape.Kind switch
        {
            ShapeKind.Even => [],
            ShapeKind.Linear => [line],
            ShapeKind.Quadratic => [line, Column(k => k * k)],
            ShapeKind.Step => [step],
            ShapeKind.Hinge => [Column(k => Math.Max(0, k - shape.AfterSet!.Value))],
            ShapeKind.LinearWithStep => [line, step],
            _ => Enumerable.Range(2, sets - 1).Select(set => Column(k => k == set ? 1 : 0)),
        };
    }

    /// <summary>Centres the columns and makes them orthonormal (Gram-Schmidt, twice); a column that adds nothing is dropped.</summary>
    private static List<double[]> Orthonormal(IEnumerable<double[]> columns)
    {
        var basis = new List<double[]>();
        foreach (var column in columns)
        {
            var rest = Profiles.CentredBySession([column])[0];
            var size = Math.Sqrt(rest.Sum(value => value * value));
            for (var pass = 0; pass < 2; pass++)
            {
                foreach (var earlier in basis) Remove(rest, earlier);
            }

            var length = Math.Sqrt(rest.Sum(value => value * value));
            if (length > 1e-10 * size) basis.Add([.. rest.Select(value => value / length)]);
        }

        return basis;
    }

    private static void Remove(double[] from, double[] unit)
    {
        double product = 0;
        for (var k = 0; k < from.Length; k++) product += from[k] * unit[k];
        for (var k = 0; k < from.Length; k++) from[k] -= product * unit[k];
    }
}
