namespace SquadAnalytics.Load;

/// <summary>What came before one test of an athlete.</summary>
public sealed record TestContextResult
{
    /// <summary>The test.</summary>
    public required Session Session { get; init; }

    /// <summary>Circumstances with a number, each beside the athlete's usual.</summary>
    public required IReadOnlyList<ContextMeasure> Measures { get; init; }

    /// <summary>Bouts in the three days before, weigh-ins within seven days, and head knocks that are not cleared.</summary>
    public required IReadOnlyList<AthleteEvent> Events { get; init; }

    /// <summary>What a reader has to know: what is missing, and that circumstances do not prove causes.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The measures in one line.</summary>
    public override string ToString() => string.Join("; ", Measures.Select(measure => FormattableString.Invariant($"{measure.Name} {measure.OnTheDay?.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture) ?? "not recorded"} {measure.Unit} (usual {measure.Usual?.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture) ?? "unknown"})")));
}
