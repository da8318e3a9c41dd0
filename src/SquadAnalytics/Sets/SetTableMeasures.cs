using System.Globalization;

namespace SquadAnalytics.Sets;

/// <summary>Per-session measures by columns: one entry per session, in the order of athlete and session.</summary>
public sealed class SetTableMeasures
{
    private readonly int[] _starts;
    private readonly int[] _athlete;
    private readonly int[] _session;
    private readonly double[] _mean;
    private readonly double[] _deviation;
    private readonly double[] _variation;
    private readonly double[] _best;
    private readonly double[] _lastToFirst;
    private readonly double[] _decrement;
    private readonly double[] _slope;

    internal SetTableMeasures(SetTableRuns runs)
    {
        _athlete = runs.Athlete;
        _session = runs.Session;
        _starts = runs.Starts;
        LeftOut = runs.LeftOut;
        double[] Column() => GC.AllocateUninitializedArray<double>(runs.Count);
        (_mean, _deviation, _variation, _best, _lastToFirst, _decrement, _slope) = (Column(), Column(), Column(), Column(), Column(), Column(), Column());
    }

    /// <summary>Number of sessions.</summary>
    public int Count => _athlete.Length;

    /// <summary>Number of sessions left out because they have fewer than 2 sets.</summary>
    public int LeftOut { get; }

    /// <summary>Number of the athlete.</summary>
    public IReadOnlyList<int> Athlete => _athlete;

    /// <summary>Number of the session.</summary>
    public IReadOnlyList<int> Session => _session;

    /// <summary>Mean set, in seconds.</summary>
    public IReadOnlyList<double> MeanSeconds => _mean;

    /// <summary>SD (n - 1) across sets, in seconds.</summary>
    public IReadOnlyList<double> StandardDeviationSeconds => _deviation;

    /// <summary>100 SD / mean, in percent.</summary>
    public IReadOnlyList<double> VariationPercent => _variation;

    /// <summary>Fastest set, in seconds.</summary>
    public IReadOnlyList<double> BestSeconds => _best;

    /// <summary>Last over first set, a plain ratio.</summary>
    public IReadOnlyList<double> LastToFirstRatio => _lastToFirst;

    /// <summary>Percentage decrement score, in percent.</summary>
    public IReadOnlyList<double> DecrementPercent => _decrement;

    /// <summary>Least-squares slope, in seconds per set.</summary>
    public IReadOnlyList<double> SlopeSecondsPerSet => _slope;

    /// <summary>Number of sets of a session.</summary>
    /// <param name="index">Index of the session in the columns.</param>
    public int SetsOf(int index) => _starts[index + 1] - _starts[index];

    /// <summary>How many sessions there are.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Count} sessions, {LeftOut} with fewer than 2 sets left out");

    /// <summary>Fills a range of sessions; returns 1 + the index of the first session with a time that is not a number above 0, or 0.</summary>
    internal int Fill(ReadOnlySpan<double> timesSeconds, int from, int to)
    {
        for (var s = from; s < to; s++)
        {
            var measures = SetMeasures.Of(timesSeconds[_starts[s].._starts[s + 1]]);
            if (!(measures.Best > 0 && measures.Worst < double.PositiveInfinity)) return s + 1;
            _mean[s] = measures.Mean;
            _deviation[s] = measures.StandardDeviation;
            _variation[s] = measures.CoefficientOfVariation;
            _best[s] = measures.Best;
            _lastToFirst[s] = measures.LastToFirst;
            _decrement[s] = measures.Decrement;
            _slope[s] = measures.Slope;
        }

        return 0;
    }
}
