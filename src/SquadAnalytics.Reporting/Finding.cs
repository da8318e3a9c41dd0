namespace SquadAnalytics.Reporting;

/// <summary>One finding in plain words, with the number it rests on, how that number was obtained, and where the method comes from.</summary>
public sealed record Finding
{
    /// <summary>Makes a finding.</summary>
    /// <param name="sentence">The finding as a complete sentence.</param>
    /// <exception cref="ArgumentException">The sentence is empty.</exception>
    public Finding(string sentence) =>
        Sentence = string.IsNullOrWhiteSpace(sentence) ? throw new ArgumentException("A finding needs its sentence.", nameof(sentence)) : sentence;

    /// <summary>The finding as a complete sentence.</summary>
    public string Sentence { get; }

    /// <summary>The estimate it rests on, or null where it states a count or a refusal.</summary>
    public Estimate? Estimate { get; init; }

    /// <summary>How it was obtained; the estimate's method where none is given.</summary>
    public string? Method { get; init; }

    /// <summary>Where the method comes from, as a reference: <c>Hopkins 2000</c>; null where it is plain arithmetic.</summary>
    public string? Source { get; init; }

    /// <summary>Over how many athletes it is an aggregate; null where it is about one athlete, or about nobody.</summary>
    public int? OverAthletes { get; init; }

    /// <summary>What limits the finding.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>A finding that says why there is none.</summary>
    public static Finding Refused(NotEstimable refusal) => new(Sentences.Refusal(refusal));

    /// <summary>Method, observations, degrees of freedom and source in one line; empty where none is known.</summary>
    public string Basis()
    {
        string?[] parts =
        [
            Method ?? Estimate?.Method,
            Estimate is { Observations: > 0 } ? $"n = {Estimate.Observations.ToString(System.Globalization.CultureInfo.InvariantCulture)}" : null,
            Estimate?.DegreesOfFreedom is { } df ? $"df = {NumberFormat.Fixed(df, df == Math.Floor(df) ? 0 : 1)}" : null,
            Estimate?.PValue is { } p ? NumberFormat.PValue(p) : null,
            Source,
        ];
        return string.Join(" · ", parts.OfType<string>());
    }

    /// <summary>The sentence.</summary>
    public override string ToString() => Sentence;
}
