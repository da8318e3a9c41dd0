using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class PacingShapeTests
{
    private static readonly SetNoiseResult OtherSessions = SetNoise.Fit(WorkedData.SixSessions).GetOrThrow();

    [Theory]
    [InlineData(ShapeKind.Even, null, 94.548)]
    [InlineData(ShapeKind.Linear, null, 13.904)]
    [InlineData(ShapeKind.Quadratic, null, 13.013)]
    [InlineData(ShapeKind.Hinge, 2, 12.120)]
    [InlineData(ShapeKind.Hinge, 3, 16.512)]
    [InlineData(ShapeKind.Step, 1, 73.178)]
    [InlineData(ShapeKind.Step, 2, 44.675)]
    [InlineData(ShapeKind.Step, 3, 9.373)]
    [InlineData(ShapeKind.Step, 4, 55.656)]
    public void The_criterion_of_every_shape_matches_R(ShapeKind kind, int? after, double criterion)
    {
        // R 4.2.2: deviance(lm(log(t) ~ shape)) / 0.01150327^2 + 2 * q, q with the intercept and 1 more where b is searched.
        var result = PacingShape.Summarize(WorkedData.FirstSession, OtherSessions).GetOrThrow();
        Assert.Equal(9, result.Shapes.Count);
        Assert.Equal(criterion, result.Shapes.Single(fit => fit.Shape == new ProfileShape(kind, after)).Criterion.Value, 6e-4);
    }

    // R 4.2.2, 40 000 runs of the rule on even pace: false alarms of 4.6 % where the noise has 10 degrees of freedom, 1.1 % where it is known
    // (0.1 % either way); of 20 and 40 the simulation job asks. Bounds are three errors of the 4000 runs here.
    [Theory]
    [InlineData(10, 4.6)]
    [InlineData(1_000_000, 1.1)]
    public void False_alarms_are_as_frequent_as_R_found(int degrees, double percent)
    {
        const int Runs = 4_000;
        var random = new SeededRandom(20310206, degrees);
        var alarms = Enumerable.Range(0, Runs).Count(_ =>
        {
            var scale = degrees > 100 ? 1 : Math.Sqrt(Enumerable.Range(0, degrees).Sum(_ => Math.Pow(random.NextNormal(), 2)) / degrees);
            var noise = OtherSessions with { LogNoise = new Estimate(0.02 * scale, Unit.LogSeconds, 6, "drawn") { DegreesOfFreedom = degrees } };
            return PacingShape.Summarize(WorkedData.One([.. Enumerable.Range(0, 5).Select(_ => 60 * Math.Exp(0.02 * random.NextNormal()))]), noise).GetOrThrow().IsNotEven;
        });
        Assert.Equal(percent, 100.0 * alarms / Runs, 3 * Math.Sqrt(percent * (100 - percent) / Runs));
    }

    [Theory]
    [InlineData(ShapeKind.Even, null, 2, -20.0598)]
    [InlineData(ShapeKind.Linear, null, 3, -11.2335)]
    [InlineData(ShapeKind.Step, 3, 3, -16.6191)]
    public void On_its_own_times_a_session_with_plain_steps_looks_even(ShapeKind kind, int? after, int parameters, double criterion)
    {
        // R 4.2.2: n <- 5; rss <- deviance(lm(log(t) ~ shape)); n * log(rss / n) + 2 * p + 2 * p * (p + 1) / (n - p - 1), p with the residual variance and without the search.
        var profile = Profiles.CentredBySession([[.. WorkedData.FirstSession.TimesSeconds.Select(time => Math.Log(time))]])[0];
        var space = ShapeSpace.Candidates(5, withJumps: false).Single(candidate => candidate.Shape == new ProfileShape(kind, after));
        Assert.Equal(criterion, InformationCriteria.Aicc(5, space.Residual(profile), parameters)!.Value, 5e-5);
        Assert.Null(InformationCriteria.Aicc(5, 1, 4));
    }

    [Fact]
    public void A_session_that_fits_several_shapes_is_not_settled()
    {
        var result = PacingShape.Summarize(WorkedData.FirstSession, OtherSessions).GetOrThrow();
        Assert.True(result.IsNotEven);
        Assert.Null(result.Shape);
        Assert.Equal(["step after set 3", "drift from set 2 on", "curved", "steady drift"], result.AlsoFit.Select(fit => fit.Shape.ToString()));
        Assert.Contains("16 degrees of freedom", result.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_large_clean_step_is_named()
    {
        var result = PacingShape.Summarize(WorkedData.One([60, 60.1, 59.9, 70, 70.1]), OtherSessions).GetOrThrow();
        Assert.Equal(new ProfileShape(ShapeKind.Step, 3), result.Shape);
    }

    [Fact]
    public void An_even_session_is_not_called_anything_else() =>
        Assert.False(PacingShape.Summarize(WorkedData.One([60, 60.4, 59.8, 60.3, 60.1]), OtherSessions).GetOrThrow().IsNotEven);

    [Fact]
    public void Without_enough_noise_from_other_sessions_there_is_no_shape()
    {
        var thin = SetNoise.Fit([.. WorkedData.SixSessions.Take(3)], new SetNoiseOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(8, thin.DegreesOfFreedom);
        Assert.Equal(Refusal.TooFewSets, PacingShape.Summarize(WorkedData.FirstSession, null).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewSessions, PacingShape.Summarize(WorkedData.FirstSession, thin).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewSessions, PacingShape.Summarize(WorkedData.FirstSession, thin, [thin]).Refusal!.Reason);
        var pooled = PacingShape.Summarize(WorkedData.FirstSession, thin, [thin, OtherSessions]).GetOrThrow();
        Assert.Equal(24, pooled.Noise.DegreesOfFreedom);
        Assert.Contains("pooled over the squad", pooled.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Pooled_noise_weighs_by_degrees_of_freedom()
    {
        // Hand arithmetic: √((16 · s1² + 20 · s2²) / 36).
        var all = SetNoise.Fit(WorkedData.SixSessions, new SetNoiseOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var expected = Math.Sqrt((16 * 0.01150327 * 0.01150327 + 20 * 0.0106937 * 0.0106937) / 36);
        Assert.Equal(expected, SetNoise.Pool([OtherSessions, all]).LogNoise.Value, 5e-8);
    }
}
