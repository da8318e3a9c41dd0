namespace SquadAnalytics.Sets;

/// <summary>What one session's profile looks like, held against the set noise of other sessions.</summary>
public sealed record PacingShapeResult
{
    /// <summary>The session.</summary>
    public required Session Session { get; init; }

    /// <summary>All shapes, best first.</summary>
    public required IReadOnlyList<ShapeFit> Shapes { get; init; }

    /// <summary>Whether the profile is not even: even lies more than 6 behind the best.</summary>
    public required bool IsNotEven { get; init; }

    /// <summary>The shape, where it beats every other by more than 6; otherwise null: not settled.</summary>
    public required ProfileShape? Shape { get; init; }

    /// <summary>The set noise used.</summary>
    public required SetNoiseResult Noise { get; init; }

    /// <summary>How far the verdict carries.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>All shapes within 6 of the best: they also fit.</summary>
    public IReadOnlyList<ShapeFit> AlsoFit => [.. Shapes.Where(fit => fit.Behind.Value <= PacingShape.Margin)];

    /// <summary>The verdict and the shapes that fit.</summary>
    public override string ToString() =>
        $"{Session.Date:yyyy-MM-dd}: {(IsNotEven ? "not even" : "no departure from even pacing shown")}; {(Shape is null ? $"shape not settled ({string.Join(", ", AlsoFit.Select(fit => fit.Shape))})" : Shape)}";
}
