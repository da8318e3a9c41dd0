using SquadAnalytics.Reliability;

namespace SquadAnalytics.Change;

/// <summary>Whether the test can see what matters.</summary>
public static class SignalAndNoise
{
    /// <summary>Compares the typical error with the smallest worthwhile change.</summary>
    /// <remarks>The ratio TE / S, without a unit, TE the typical error and S the smallest worthwhile change. TE &lt;= S: good (the standard error of a change is still √2 TE); S &lt; TE &lt;= 2S: usable with repeated tests; TE > 2S: too noisy for single athletes.
    /// Assumes that both are of the same measure. Words: common practice, no source.</remarks>
    /// <exception cref="ArgumentException">Error and smallest worthwhile change are in different units.</exception>
    public static SignalAndNoiseResult Summarize(TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile)
    {
        var ratio = Ratio(typicalError, worthwhile);
        return new SignalAndNoiseResult
        {
            Ratio = new Estimate(ratio, Unit.None, typicalError.Estimate.Observations, "typical error / smallest worthwhile change"),
            Word = ratio <= 1 ? NoiseWord.Good : ratio <= 2 ? NoiseWord.UsableWithRepeatedTests : NoiseWord.TooNoisyForSingleAthletes,
            TestsNeeded = NumberOfTests.Needed(typicalError, worthwhile),
        };
    }

    /// <summary>TE / S in the unit of S: the coefficient of variation where S is a percentage.</summary>
    internal static double Ratio(TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        ArgumentNullException.ThrowIfNull(worthwhile);
        var error = typicalError.Estimate.Unit != worthwhile.Estimate.Unit && worthwhile.Estimate.Unit == Unit.Percent && typicalError.Variation.TryGet(out var variation) ? variation : typicalError.Estimate;
        worthwhile.RequireUnit(error.Unit, nameof(worthwhile));
        return error.Value / worthwhile.Estimate.Value;
    }
}
