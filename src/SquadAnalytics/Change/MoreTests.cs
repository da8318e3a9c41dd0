using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Change;

/// <summary>How many more tests until a question can be told? Power curves from an athlete's own noise, and the smallest difference that a plan could show.</summary>
/// <remarks>
/// Exact noncentral t: the chance that t with non-centrality d / SE exceeds its one-sided critical value (Cohen 1988, Statistical power
/// analysis, from memory; checked against R's pt). The interval of a chance is that of the noise, worked through. All curves hold for one
/// decision after the last test: deciding after each test raises false alarms.
/// </remarks>
public static partial class MoreTests
{
    private const int BreakNeeds = 4;
    private const string OneDecision = "One decision after the last test: deciding after every test raises false alarms.";

    /// <summary>A break after set b, as <see cref="LateSlowdown"/> names it: late and kink contrast both above 0 over all sessions.</summary>
    /// <remarks>With a step d = ln(1 + size/100) after b and set noise σ: SE(c) = σ √(Σ w² / m), c a contrast with weights w, m sessions in all, n sets; the kink contrast shows b (n - b) / n Σ w² of d. m - 1 degrees of freedom.
    /// The chance of both is at least the sum of the two chances less 1, which is what is given. Assumes independent set noise on the scale of logarithms, the same in all sessions.</remarks>
    /// <param name="noise">The athlete's set noise.</param>
    /// <param name="size">The break, above 0, in percent of a set's time.</param>
    /// <param name="afterSet">The set b, named in advance.</param>
    /// <param name="sessionsSoFar">Eligible sessions that are there already; 0 or more. From 4 on the curve begins with no further one.</param>
    /// <param name="options">Chance wanted, longest, level; null for the defaults.</param>
    /// <returns>The curve, or <see cref="Refusal.TooFewSets"/> below 3 sets.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The break is not above 0, b is not a set before the last, or the sessions are below 0.</exception>
    public static Answer<MoreTestsResult> ForBreak(SetNoiseResult noise, Percent size, int afterSet, int sessionsSoFar = 0, MoreTestsOptions? options = null)
    {
        Require.Positive(size.Value, nameof(size));
        return OfBreak(noise, afterSet, sessionsSoFar).Select(test => Curve(test, Math.Log(1 + size.Value / 100), noise.LogNoise, 1,
            Text($"A break of {size.Value:0.##} % after set {afterSet}"), options, BreakNotes(noise, sessionsSoFar)));
    }

    /// <summary>The smallest break, in percent, that a number of sessions shows with the chance wanted.</summary>
    /// <inheritdoc cref="ForBreak" path="/remarks"/>
    /// <param name="noise">The athlete's set noise.</param>
    /// <param name="afterSet">The set b, named in advance.</param>
    /// <param name="sessions">Sessions in all; 4 or more.</param>
    /// <param name="options">Chance wanted, level; null for the defaults.</param>
    /// <returns>The break, or <see cref="Refusal.TooFewSessions"/> below 4 sessions, <see cref="Refusal.TooFewSets"/> below 3 sets.</returns>
    /// <exception cref="ArgumentOutOfRangeException">b is not a set before the last, or the chance wanted is not above the one-sided rate of false alarms.</exception>
    public static Answer<Estimate> SmallestBreak(SetNoiseResult noise, int afterSet, int sessions, MoreTestsOptions? options = null)
    {
        var test = OfBreak(noise, afterSet, 0);
        if (test.IsEstimated && sessions < BreakNeeds) return new NotEstimable("the smallest break", Refusal.TooFewSessions, BreakNeeds, sessions, "sessions");
        return test.Select(kind => Smallest(kind, noise.LogNoise, 1, sessions, Unit.Percent, options, BreakNotes(noise, 0)));
    }

    /// <summary>A change of one athlete: the mean of the further tests against the mean of earlier ones.</summary>
    /// <remarks>SE = TE √(1/m1 + 1/m2), t with the degrees of freedom of the typical error. However many further tests, the m1 earlier ones keep their noise: a wanted chance may never be reached.
    /// Assumes normal, independent tests and a level that holds still before and after.</remarks>
    /// <param name="typicalError">The typical error.</param>
    /// <param name="change">The size of the true change, faster or slower.</param>
    /// <param name="baselineTests">Earlier tests m1; 1 or more.</param>
    /// <param name="options">Chance wanted, longest, level; null for the defaults.</param>
    /// <exception cref="ArgumentException">Change and typical error are in different units.</exception>
    public static MoreTestsResult ForChange(TypicalErrorResult typicalError, SmallestWorthwhileChange change, int baselineTests, MoreTestsOptions? options = null)
    {
        var ratio = SignalAndNoise.Ratio(typicalError, change);
        return Curve(OfChange(typicalError, baselineTests), change.Estimate.Value, typicalError.Estimate, ratio * change.Estimate.Value / typicalError.Estimate.Value,
            Text($"A change of {change.Estimate.Value:0.##} {change.Estimate.Unit.Symbol()} against {baselineTests} earlier tests"), options, TestNotes(typicalError));
    }

    /// <summary>A change of one athlete: the mean of some further tests against the mean of as many earlier ones.</summary>
    /// <remarks>SE = TE √(2/m), m tests on either side; t with the degrees of freedom of the typical error. Assumes normal, independent tests and a level that holds still on either side.</remarks>
    /// <param name="typicalError">The typical error.</param>
    /// <param name="change">The size of the true change, faster or slower.</param>
    /// <param name="options">Chance wanted, longest, level; null for the defaults.</param>
    /// <exception cref="ArgumentException">Change and typical error are in different units.</exception>
    public static MoreTestsResult ForChangeOfEqualSides(TypicalErrorResult typicalError, SmallestWorthwhileChange change, MoreTestsOptions? options = null)
    {
        var ratio = SignalAndNoise.Ratio(typicalError, change);
        return Curve(OfEqualSides(typicalError), change.Estimate.Value, typicalError.Estimate, ratio * change.Estimate.Value / typicalError.Estimate.Value,
            Text($"A change of {change.Estimate.Value:0.##} {change.Estimate.Unit.Symbol()} with as many tests before as after"), options, TestNotes(typicalError));
    }

    /// <summary>The smallest change of one athlete that a number of further tests shows with the chance wanted, in the unit of the typical error.</summary>
    /// <inheritdoc cref="ForChange" path="/remarks"/>
    /// <param name="typicalError">The typical error.</param>
    /// <param name="baselineTests">Earlier tests m1; 1 or more.</param>
    /// <param name="furtherTests">Further tests m2; 1 or more.</param>
    /// <param name="options">Chance wanted, level; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of tests is below 1, or the chance wanted is not above the one-sided rate of false alarms.</exception>
    public static Estimate SmallestChange(TypicalErrorResult typicalError, int baselineTests, int furtherTests, MoreTestsOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        return Smallest(OfChange(typicalError, baselineTests), typicalError.Estimate, 1, Require.AtLeast(1, furtherTests), typicalError.Estimate.Unit, options, TestNotes(typicalError));
    }

    /// <summary>A difference between two blocks over a squad that does both, by tests in each block.</summary>
    /// <remarks>Paired t over k athletes, k - 1 degrees of freedom, SD of a difference √(2 TE²/n + SD_I²) with n tests per block and the SD of individual responses SD_I.
    /// With individual responses, more tests help less and less; more athletes help. Assumes normal, independent tests and responses.</remarks>
    /// <param name="typicalError">The typical error of one test.</param>
    /// <param name="difference">The size of the true mean difference.</param>
    /// <param name="athletes">Athletes who do both blocks; 2 or more.</param>
    /// <param name="individualResponses">SD of true differences between athletes, in the unit of the difference; 0 or more.</param>
    /// <param name="options">Chance wanted, longest, level; null for the defaults.</param>
    /// <returns>The curve, or <see cref="Refusal.TooFewAthletes"/> below 2.</returns>
    public static Answer<MoreTestsResult> ForBlocks(TypicalErrorResult typicalError, SmallestWorthwhileChange difference, int athletes, double individualResponses = 0, MoreTestsOptions? options = null)
    {
        var ratio = SignalAndNoise.Ratio(typicalError, difference);
        return OfBlocks(athletes, individualResponses).Select(test => Curve(test, difference.Estimate.Value, typicalError.Estimate, ratio * difference.Estimate.Value / typicalError.Estimate.Value,
            Text($"A block difference of {difference.Estimate.Value:0.##} {difference.Estimate.Unit.Symbol()} over {athletes} athletes"), options, BlockNotes(typicalError, individualResponses)));
    }

    /// <summary>Before a block starts: the smallest mean difference between two blocks that the plan shows with the chance wanted, in the unit of the typical error.</summary>
    /// <inheritdoc cref="ForBlocks" path="/remarks"/>
    /// <param name="typicalError">The typical error of one test.</param>
    /// <param name="athletes">Athletes who do both blocks; 2 or more.</param>
    /// <param name="testsPerBlock">Tests of each athlete in each block; 1 or more.</param>
    /// <param name="individualResponses">SD of true differences between athletes, in the unit of the typical error; 0 or more.</param>
    /// <param name="options">Chance wanted, level; null for the defaults.</param>
    /// <returns>The difference, or <see cref="Refusal.TooFewAthletes"/> below 2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tests are below 1, the SD is below 0, or the chance wanted is not above the one-sided rate of false alarms.</exception>
    public static Answer<Estimate> SmallestBlockDifference(TypicalErrorResult typicalError, int athletes, int testsPerBlock, double individualResponses = 0, MoreTestsOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        Require.AtLeast(1, testsPerBlock);
        return OfBlocks(athletes, individualResponses).Select(test =>
            Smallest(test, typicalError.Estimate, 1, testsPerBlock, typicalError.Estimate.Unit, options, BlockNotes(typicalError, individualResponses)));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
