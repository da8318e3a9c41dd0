namespace SquadAnalytics.Standing;

/// <summary>The band of an athlete's latest test, with its uncertainty.</summary>
public sealed record ProbableBandResult
{
    /// <summary>The session total, in seconds, with the noise of one test as standard error.</summary>
    public required Estimate Total { get; init; }

    /// <summary>Name of the band the total falls in as it stands.</summary>
    public required string Observed { get; init; }

    /// <summary>The band that may be announced: the observed one where it is settled, otherwise the one before; null where nothing is settled yet.</summary>
    public required string? Announced { get; init; }

    /// <summary>The band that was held before the latest test; null for a first test.</summary>
    public required string? Before { get; init; }

    /// <summary>How many of the latest tests in a row fall in the observed band; 1 where it rests on the latest test alone.</summary>
    public required int InARow { get; init; }

    /// <summary>What may be said of it.</summary>
    public required BandStanding Standing { get; init; }

    /// <summary>The probability of every band, fastest first, and of both sides outside.</summary>
    public required IReadOnlyList<BandChance> Chances { get; init; }

    /// <summary>Whether the observed band is a slower one than the band before; null where they are the same or nothing was held before.</summary>
    public bool? IsSlower => Before is null || Before == Observed ? null : Place(Observed) > Place(Before);

    /// <summary>The bands, and the sides outside them, that an interval of totals reaches, fastest first.</summary>
    /// <param name="totals">A total with its interval, in seconds, for example the level over several tests.</param>
    public IReadOnlyList<string> Reached(Estimate totals)
    {
        ArgumentNullException.ThrowIfNull(totals);
        var (lower, upper) = (totals.Lower ?? totals.Value, totals.Upper ?? totals.Value);
        PerformanceBand[] bands = [.. Chances.Select(chance => chance.Band).OfType<PerformanceBand>()];
        return [.. Chances.Where((chance, place) => chance.Band is { } band
            ? band.Low.Value <= upper && band.High.Value > lower
            : place == 0 ? lower < bands[0].Low.Value : upper >= bands[^1].High.Value).Select(chance => chance.Name)];
    }

    /// <summary>Observed band and standing.</summary>
    public override string ToString() => $"{Total}: {Observed} ({Standing}); {string.Join(", ", Chances)}";

    private int Place(string name) => Chances.TakeWhile(chance => chance.Name != name).Count();
}
