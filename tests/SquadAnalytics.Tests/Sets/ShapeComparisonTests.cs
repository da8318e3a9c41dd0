using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class ShapeComparisonTests
{
    private static readonly ShapeComparisonOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Theory]
    [InlineData(ShapeKind.Free, null, -208.8712)]
    [InlineData(ShapeKind.LinearWithStep, 3, -208.4766)]
    [InlineData(ShapeKind.Hinge, 2, -198.3691)]
    [InlineData(ShapeKind.Quadratic, null, -198.2412)]
    [InlineData(ShapeKind.Linear, null, -190.7913)]
    [InlineData(ShapeKind.Step, 3, -188.5108)]
    [InlineData(ShapeKind.Even, null, -139.0816)]
    public void The_criterion_of_every_shape_matches_R(ShapeKind kind, int? after, double criterion)
    {
        // R 4.2.2: N <- 24; rss <- deviance(lm(log(t) ~ factor(session) + shape)); N * log(rss / N) + 2 * p + 2 * p * (p + 1) / (N - p - 1).
        var result = ShapeComparison.Fit(WorkedData.SixSessions, All).GetOrThrow();
        Assert.Equal(criterion, result.Shapes.Single(fit => fit.Shape == new ProfileShape(kind, after)).Criterion.Value, 6e-5);
    }

    [Theory]
    [InlineData(ShapeKind.Free, null, 0.002287105)]
    [InlineData(ShapeKind.LinearWithStep, 3, 0.002659746)]
    public void What_a_shape_leaves_matches_R(ShapeKind kind, int? after, double squares)
    {
        // R 4.2.2: deviance(lm(log(t) ~ factor(session) + shape)).
        var centred = Profiles.CentredBySession([.. WorkedData.SixSessions.Select(session => session.TimesSeconds.Select(time => Math.Log(time)).ToArray())]);
        var space = ShapeSpace.Candidates(5, withJumps: true).Single(candidate => candidate.Shape == new ProfileShape(kind, after));
        Assert.Equal(squares, Profiles.FreeResidual(centred) + 6 * space.Residual(Profiles.MeanProfile(centred)), 5e-10);
    }

    [Fact]
    public void A_drift_with_a_jump_does_as_well_as_free_means()
    {
        var result = ShapeComparison.Fit(WorkedData.SixSessions, All).GetOrThrow();
        Assert.Equal([ShapeKind.Free, ShapeKind.LinearWithStep], result.Indistinguishable.Select(fit => fit.Shape.Kind));
        Assert.Equal(0.39, result.Shapes[1].Behind.Value, 6e-3);
        Assert.Equal(1, result.Shapes.Sum(fit => fit.Weight.Value), 1e-12);

        // R 4.2.2: e <- matrix(resid(lm(log(t) ~ session + set)), 6); sum(e[, -1] * e[, -5]) / sum(e^2).
        Assert.Equal(-0.319533187774, result.ResidualAutocorrelation.Value, 1e-11);
    }

    [Fact]
    public void Shapes_that_span_the_same_space_are_listed_once()
    {
        // Hand arithmetic for 3 sets: quadratic, drift with a jump and free means are the same space.
        var result = ShapeComparison.Fit(WorkedData.Sessions([60, 61, 63], [60.2, 61.4, 62.9], [59.8, 61.1, 63.4], [60.3, 61, 63.1], [60, 61.5, 63]), All).GetOrThrow();
        Assert.Equal(5, result.Shapes.Count);
    }

    [Fact]
    public void Three_sessions_are_refused() =>
        Assert.Equal(Refusal.TooFewSessions, ShapeComparison.Fit([.. WorkedData.SixSessions.Take(3)], All).Refusal!.Reason);
}
