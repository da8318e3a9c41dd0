using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Change;

public static partial class MoreTests
{
    private static Answer<TestOfDifference> OfBreak(SetNoiseResult noise, int afterSet, int sessionsSoFar)
    {
        ArgumentNullException.ThrowIfNull(noise);
        Require.AtLeast(0, sessionsSoFar);
        var n = noise.Sets;
        LateSlowdown.CheckSet(afterSet, n, nameof(afterSet));
        if (n < 3) return new NotEstimable("the late slow-down", Refusal.TooFewSets, 3, n, "sets");
        double[] late = Contrasts.Late(n, afterSet), kink = Contrasts.Kink(n, afterSet);
        var lateLength = Math.Sqrt(Contrasts.Apply(late, late));
        var kinkLength = Math.Sqrt(Contrasts.Apply(kink, kink)) / Contrasts.KinkOfStep(n, afterSet);
        return new TestOfDifference
        {
            StandardErrors =
            [
                (sigma, further) => sigma * lateLength / Math.Sqrt(sessionsSoFar + further),
                (sigma, further) => sigma * kinkLength / Math.Sqrt(sessionsSoFar + further),
            ],
            DegreesOfFreedom = further => sessionsSoFar + further - 1,
            Fewest = Math.Max(0, BreakNeeds - sessionsSoFar),
        };
    }

    private static TestOfDifference OfChange(TypicalErrorResult typicalError, int baselineTests)
    {
        Require.AtLeast(1, baselineTests);
        return new TestOfDifference
        {
            StandardErrors = [(error, further) => error * Math.Sqrt(1.0 / baselineTests + 1.0 / further)],
            DegreesOfFreedom = _ => typicalError.DegreesOfFreedom,
        };
    }

    private static TestOfDifference OfEqualSides(TypicalErrorResult typicalError) => new()
    {
        StandardErrors = [(error, tests) => error * Math.Sqrt(2.0 / tests)],
        DegreesOfFreedom = _ => typicalError.DegreesOfFreedom,
    };

    private static Answer<TestOfDifference> OfBlocks(int athletes, double individualResponses)
    {
        if (!(individualResponses >= 0 && double.IsFinite(individualResponses))) throw new ArgumentOutOfRangeException(nameof(individualResponses), individualResponses, "An SD is 0 or more.");
        if (athletes < 2) return new NotEstimable("the block difference", Refusal.TooFewAthletes, 2, athletes, "athletes");
        return new TestOfDifference
        {
            StandardErrors = [(error, further) => Math.Sqrt((2 * error * error / further + individualResponses * individualResponses) / athletes)],
            DegreesOfFreedom = _ => athletes - 1,
        };
    }

    private static MoreTestsResult Curve(TestOfDifference test, double difference, Estimate noise, double scale, string question, MoreTestsOptions? options, IReadOnlyList<string> assumptions)
    {
        options ??= new MoreTestsOptions();
        Estimate At(int further)
        {
            double Power(double error) => test.Power(difference, scale * error, further, options.Level);
            return new Estimate(Power(noise.Value), Unit.Probability, noise.Observations, "noncentral t, one-sided")
            {
                DegreesOfFreedom = test.DegreesOfFreedom(further),
                // The larger the noise, the smaller the chance; near 1 both ends may differ by rounding only.
                Interval = noise.Interval is { } limits ? new Interval(Math.Min(Power(limits.Upper), Power(limits.Lower)), Power(limits.Lower), limits.ConfidenceLevel) : null,
            };
        }

        PowerPoint[] curve = [.. Enumerable.Range(test.Fewest, options.Longest + (test.Fewest == 0 ? 1 : 0)).Select(further => new PowerPoint(further, At(further)))];
        var enough = curve.FirstOrDefault(point => point.Power.Value >= options.Wanted);
        return new MoreTestsResult
        {
            Question = question,
            Curve = curve,
            Wanted = options.Wanted,
            Needed = enough is null
                ? new NotEstimable("the number of further tests", Refusal.TooFewSessions, Text($"a chance of {options.Wanted:0.##}"), Text($"{curve[^1].Power.Value:0.##} with {curve[^1].Further} further tests"))
                : new Estimate(enough.Further, Unit.Sessions, noise.Observations, Text($"smallest number of further tests with a chance of at least {options.Wanted:0.##}")).WithNotes(assumptions),
            Assumptions = assumptions,
        };
    }

    private static Estimate Smallest(TestOfDifference test, Estimate noise, double scale, int further, Unit unit, MoreTestsOptions? options, IReadOnlyList<string> notes)
    {
        options ??= new MoreTestsOptions();
        double Of(double error)
        {
            var difference = test.Smallest(scale * error, further, options);
            return unit == Unit.Percent && noise.Unit == Unit.LogSeconds ? Percent.FromLog(difference).Value : difference;
        }

        return new Estimate(Of(noise.Value), unit, noise.Observations, Text($"difference told with a chance of {options.Wanted:0.##}, noncentral t, one-sided"))
        {
            DegreesOfFreedom = test.DegreesOfFreedom(further),
            Interval = noise.Interval is { } limits ? new Interval(Of(limits.Lower), Of(limits.Upper), limits.ConfidenceLevel) : null,
            Notes = notes,
        };
    }

    private static string[] BreakNotes(SetNoiseResult noise, int sessionsSoFar) =>
    [
        Text($"Set noise {noise.Noise.Value:0.##} %, independent and of one size in every set, the same break in every session."),
        Text($"All {sessionsSoFar} sessions so far and the further ones are judged together, on logarithms, the set named in advance."),
        "The chance is a lower bound: both contrasts must be above 0.",
        OneDecision,
    ];

    private static string[] TestNotes(TypicalErrorResult typicalError) =>
    [
        Text($"Typical error {typicalError.Estimate.Value:0.##} {typicalError.Estimate.Unit.Symbol()} with {typicalError.DegreesOfFreedom:0.#} degrees of freedom, the same before and after. Assumed: tests independent, no drift between them; a squad that moves as one from test to test breaks that."),
        OneDecision,
    ];

    private static string[] BlockNotes(TypicalErrorResult typicalError, double individualResponses) =>
    [
        .. TestNotes(typicalError),
        Text($"Individual responses with an SD of {individualResponses:0.##} {typicalError.Estimate.Unit.Symbol()}; the same number of tests in both blocks. A difference between blocks in sequence is not its cause."),
    ];
}
