using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>The smallest change S that would matter to the coach. Always positive.</summary>
public sealed record SmallestWorthwhileChange
{
    private const double SpreadFraction = 0.2;
    private const double CompetitionFraction = 0.3;

    private SmallestWorthwhileChange(Estimate estimate, WorthwhileChoice choice)
    {
        Estimate = estimate;
        Choice = choice;
    }

    /// <summary>S, in seconds or percent, with where it comes from.</summary>
    public Estimate Estimate { get; }

    /// <summary>How it was chosen.</summary>
    public WorthwhileChoice Choice { get; }

    /// <summary>A number of seconds that the coach already acts on.</summary>
    /// <remarks>Taken as it is, without an interval. Source: the coach.</remarks>
    public static SmallestWorthwhileChange Entered(Seconds seconds) => Of(Require.Positive(seconds.Value, nameof(seconds)), Unit.Seconds, 0, WorthwhileChoice.Entered, "entered");

    /// <summary>A percentage that the coach already acts on.</summary>
    /// <remarks>Taken as it is, without an interval. Source: the coach.</remarks>
    public static SmallestWorthwhileChange Entered(Percent percent) => Of(Require.Positive(percent.Value, nameof(percent)), Unit.Percent, 0, WorthwhileChoice.Entered, "entered");

    /// <summary>A fraction of a band's width, in seconds: fraction × (high - low).</summary>
    /// <remarks>Assumes that bands are as wide as a step that matters. Source: common practice, no source.</remarks>
    /// <param name="band">The band.</param>
    /// <param name="fraction">The fraction of its width; above 0. Null for 10 %, a house value, not from the literature: to be confirmed once by the coach.</param>
    public static SmallestWorthwhileChange FromBand(PerformanceBand band, Percent? fraction = null)
    {
        ArgumentNullException.ThrowIfNull(band);
        var share = Require.Positive((fraction ?? new Percent(10)).Value, nameof(fraction));
        return Of(share / 100 * band.Width.Value, Unit.Seconds, 0, WorthwhileChoice.BandFraction, string.Create(CultureInfo.InvariantCulture, $"{share:0.#} % of the width of band {band.Name}"),
            fraction is null ? ["10 % of a band is a house value, not from the literature: the coach confirms it once."] : []);
    }

    /// <summary>A fraction of the width of the fastest band that applies on a day, in seconds.</summary>
    /// <inheritdoc cref="FromBand(PerformanceBand, Percent?)" path="/remarks"/>
    /// <param name="protocol">The protocol.</param>
    /// <param name="date">The day.</param>
    /// <param name="fraction">The fraction of its width; above 0. Null for 10 %, a house value, not from the literature: to be confirmed once by the coach.</param>
    /// <returns>S, or <see cref="Refusal.BandsMissing"/> where the protocol has none.</returns>
    public static Answer<SmallestWorthwhileChange> FromBand(Protocol protocol, DateOnly date, Percent? fraction = null)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return protocol.BandsOn(date) is [var fastest, ..]
            ? FromBand(fastest, fraction)
            : new NotEstimable("the smallest worthwhile change", Refusal.BandsMissing, "a band of session totals", string.Create(CultureInfo.InvariantCulture, $"none: {protocol.Name} has no bands on {date:yyyy-MM-dd}"));
    }

    /// <summary>A fifth of the true spread between athletes, from the mean squares of repeated tests: 0.2 √((MSB - MSE) / k).</summary>
    /// <remarks>In the unit of the measure. A convention for mean effects. Assumes athletes and errors as the two-way analysis of variance does. Source: Hopkins 2004, Sportscience 8:1-7.</remarks>
    /// <returns>S, or <see cref="Refusal.NegativeVarianceComponent"/> where athletes differ by no more than noise.</returns>
    public static Answer<SmallestWorthwhileChange> FromSquadSpread(IntraclassCorrelationResult reliability)
    {
        ArgumentNullException.ThrowIfNull(reliability);
        return reliability.BetweenAthletes.Select(spread => FromSpread(spread.Value, spread.Unit, reliability.Athletes, "0.2 of the SD between athletes, noise removed, from repeated tests"));
    }

    /// <summary>A fifth of the true spread between athletes on one test day: 0.2 √(SD² - TE²), in seconds.</summary>
    /// <remarks>Assumes that noise and true levels are independent. Source: Hopkins 2004, Sportscience 8:1-7.</remarks>
    /// <param name="totalsSeconds">One total per athlete.</param>
    /// <param name="typicalError">The typical error of one test, in seconds.</param>
    /// <returns>S, or <see cref="Refusal.TooFewAthletes"/> below 5, or <see cref="Refusal.NegativeVarianceComponent"/>.</returns>
    /// <exception cref="ArgumentException">The typical error is not in seconds.</exception>
    public static Answer<SmallestWorthwhileChange> FromTestDay(IReadOnlyList<double> totalsSeconds, TypicalErrorResult typicalError)
    {
        ArgumentNullException.ThrowIfNull(totalsSeconds);
        ArgumentNullException.ThrowIfNull(typicalError);
        if (typicalError.Estimate.Unit != Unit.Seconds) throw new ArgumentException($"The typical error must be in seconds, not in {typicalError.Estimate.Unit.Symbol()}.", nameof(typicalError));
        if (totalsSeconds.Count < 5) return new NotEstimable("the smallest worthwhile change", Refusal.TooFewAthletes, 5, totalsSeconds.Count, "athletes");
        var variance = Descriptive.Variance(totalsSeconds) - typicalError.Estimate.Value * typicalError.Estimate.Value;
        if (!(variance > 0)) return new NotEstimable("the smallest worthwhile change", Refusal.NegativeVarianceComponent, "more spread between athletes than noise", "less");
        return FromSpread(Math.Sqrt(variance), Unit.Seconds, totalsSeconds.Count, "0.2 of the SD between athletes on one test day, noise removed");
    }

    /// <summary>Three tenths of a within-athlete variation between competitions, for solo athletes.</summary>
    /// <remarks>There is no competition in this test, so the variation must be a published one. Assumes that it is that of athletes like these. Source: Hopkins 2004, Sportscience 8:1-7.</remarks>
    /// <param name="publishedVariation">The published coefficient of variation, or null where there is none.</param>
    /// <returns>S in percent, or <see cref="Refusal.NotComparable"/> without a published value: the typical error of weekly tests is no substitute.</returns>
    public static Answer<SmallestWorthwhileChange> FromCompetitions(Percent? publishedVariation) => publishedVariation is { } variation
        ? Of(CompetitionFraction * Require.Positive(variation.Value, nameof(publishedVariation)), Unit.Percent, 0, WorthwhileChoice.PublishedCompetitionVariation, "0.3 of a published variation between competitions")
        : new NotEstimable("the smallest worthwhile change from competitions", Refusal.NotComparable, "a published variation between competitions", "none; this test is no competition");

    /// <summary>The same with another size, to see whether a verdict depends on it: 0.5 for half, 2 for double.</summary>
    /// <param name="factor">The factor; above 0.</param>
    public SmallestWorthwhileChange Times(double factor) =>
        Of(Require.Positive(factor) * Estimate.Value, Estimate.Unit, Estimate.Observations, Choice, string.Create(CultureInfo.InvariantCulture, $"{factor:0.##} times {Estimate.Method}"), Estimate.Notes);

    /// <summary>S and where it comes from.</summary>
    public override string ToString() => $"Smallest worthwhile change {Estimate} ({Estimate.Method})";

    internal void RequireUnit(Unit unit, string parameter)
    {
        if (Estimate.Unit != unit) throw new ArgumentException($"The smallest worthwhile change must be in {unit.Symbol()} here, but is in {Estimate.Unit.Symbol()}.", parameter);
    }

    private static SmallestWorthwhileChange FromSpread(double spread, Unit unit, int athletes, string method) => Of(SpreadFraction * spread, unit, athletes, WorthwhileChoice.SquadSpread, method,
    [
        "A default for a mean effect: a convention, not proof that an athlete benefits.",
        "Depends on who is in the squad: light and heavy boxers together inflate it.",
        "Different choices give different verdicts: see the verdict under half and double as well.",
        .. athletes < 10 ? [string.Create(CultureInfo.InvariantCulture, $"Rests on {athletes} athletes only.")] : Array.Empty<string>(),
    ]);

    private static SmallestWorthwhileChange Of(double value, Unit unit, int observations, WorthwhileChoice choice, string method, params IReadOnlyList<string> notes) =>
        new(new Estimate(value, unit, observations, method) { Notes = notes }, choice);
}
