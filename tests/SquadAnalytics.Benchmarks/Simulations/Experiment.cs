using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>One setting in which data with a known truth are drawn again and again and analysed.</summary>
internal abstract class Experiment
{
    private const double StatedUnits = 1e9;

    /// <summary>The setting in words, the same for all rows of this experiment.</summary>
    public abstract string Setting { get; }

    /// <summary>Whether a fit takes more than 5 ms, so that fewer runs must do.</summary>
    public virtual bool IsSlow => false;

    /// <summary>Confidence level of the intervals whose coverage is counted.</summary>
    public ConfidenceLevel Level { get; set; } = ConfidenceLevel.Ninety;

    /// <summary>What every run answers.</summary>
    public abstract IReadOnlyList<Question> Questions { get; }

    /// <summary>Draws once and answers the questions in their order; null where the analysis refuses.</summary>
    public abstract IReadOnlyList<Reply> Trial(SeededRandom random);

    /// <summary>Runs the experiment. Every run has its own stream, so the count does not depend on how runs are spread over threads; every setting has its own seed, so that luck is not shared between rows.</summary>
    /// <param name="runs">How many runs.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many threads.</param>
    public IReadOnlyList<Rate> Run(int runs, long seed, int threads)
    {
        var hits = new int[Questions.Count];
        var answers = new int[Questions.Count];
        var stated = new long[Questions.Count];
        var own = seed ^ Mixed(Setting);
        Parallel.For(0, runs, new ParallelOptions { MaxDegreeOfParallelism = threads }, run =>
        {
            var answered = Trial(new SeededRandom(own, run + 1));
            for (var question = 0; question < answered.Count; question++)
            {
                if (answered[question] is not { Yes: { } yes } reply) continue;
                Interlocked.Increment(ref answers[question]);
                if (yes) Interlocked.Increment(ref hits[question]);
                // Whole units of 10⁻⁹, so that the sum does not depend on the order of the runs.
                if (reply.Stated is { } confidence) Interlocked.Add(ref stated[question], (long)Math.Round(confidence * StatedUnits));
            }
        });
        return [.. Questions.Select((question, index) => new Rate(Setting, Said(question, index), hits[index], answers[index]))];

        Question Said(Question question, int index) => question.Promise == Promise.AsStated && answers[index] > 0 ? question with { Nominal = stated[index] / StatedUnits / answers[index] } : question;
    }

    /// <summary>The question whether an interval covers the truth.</summary>
    protected Question Interval(string of, Promise promise = Promise.Exactly) => new($"{of}: {Level} interval covers", promise, Level.Fraction);

    /// <summary>The question whether an interval covers the truth as often as it says of itself.</summary>
    protected Question IntervalAsStated(string of) => new($"{of}: interval for {Level} covers", Promise.AsStated);

    /// <summary>Whether an interval covers a truth in the unit of the estimate; null where there is no interval.</summary>
    protected static bool? Covers(Estimate? estimate, double truth) => estimate?.Interval is { } interval ? interval.Lower <= truth && truth <= interval.Upper : null;

    /// <summary>A number made of a text (FNV-1a, 64 bits), the same on every machine.</summary>
    private static long Mixed(string text)
    {
        var hash = 0xCBF29CE484222325UL;
        foreach (var letter in text) hash = unchecked((hash ^ letter) * 0x100000001B3UL);
        return unchecked((long)hash);
    }
}
