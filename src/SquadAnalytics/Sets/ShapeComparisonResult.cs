namespace SquadAnalytics.Sets;

/// <summary>Candidate shapes compared over several sessions.</summary>
public sealed record ShapeComparisonResult
{
    /// <summary>The shapes that could be compared, best first.</summary>
    public required IReadOnlyList<ShapeFit> Shapes { get; init; }

    /// <summary>Lag-1 autocorrelation of the best shape's residuals within sessions: far from 0 the ranking is in doubt.</summary>
    public required Estimate ResidualAutocorrelation { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>How to read the ranking.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Shapes that cannot be told from the best: less than 2 behind.</summary>
    public IReadOnlyList<ShapeFit> Indistinguishable => [.. Shapes.Where(fit => fit.Behind.Value < 2)];

    /// <summary>The shapes, best first.</summary>
    public override string ToString() => string.Join("; ", Shapes);
}
