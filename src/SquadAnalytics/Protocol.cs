using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>
/// One version of a test: the circuit, how many sets, how often the rolling clock starts one, and what happens at a missed start.
/// A version never changes once it was used; a scaled variant (fewer repetitions for juniors) is another version.
/// </summary>
public sealed record Protocol
{
    /// <summary>Makes a protocol version.</summary>
    /// <param name="id">Its id, unique in the logbook.</param>
    /// <param name="name">Its name as printed.</param>
    /// <param name="stations">The stations in their order; may be empty where only set times are kept.</param>
    /// <param name="sets">Number of sets, N; 2 or more.</param>
    /// <param name="startInterval">The start interval T of the rolling clock, or null where it is not known.</param>
    /// <exception cref="ArgumentException">A text is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two sets, or a start interval that is not above 0.</exception>
    public Protocol(string id, string name, IReadOnlyList<Station> stations, int sets, Seconds? startInterval)
    {
        ArgumentNullException.ThrowIfNull(stations);
        Id = Require.Text(id);
        Name = Require.Text(name);
        Stations = [.. stations];
        Sets = Require.AtLeast(2, sets);
        if (startInterval is { } interval) Require.Positive(interval.Value, nameof(startInterval));
        StartInterval = startInterval;
    }

    /// <summary>Its id, unique in the logbook.</summary>
    public string Id { get; }

    /// <summary>Its name as printed.</summary>
    public string Name { get; }

    /// <summary>The stations in their order.</summary>
    public IReadOnlyList<Station> Stations { get; }

    /// <summary>Number of sets, N.</summary>
    public int Sets { get; }

    /// <summary>Start interval T of the rolling clock, or null where it is not known.</summary>
    public Seconds? StartInterval { get; }

    /// <summary>What happens at a missed start.</summary>
    public StartRule StartRule { get; init; } = StartRule.StartWhenFinished;

    /// <summary>All bands of session totals, of every valid-from date.</summary>
    public IReadOnlyList<PerformanceBand> Bands { get; init; } = [];

    /// <summary>The id of the protocol that this one scales down or up, or null.</summary>
    public string? VariantOf { get; init; }

    /// <summary>What makes sessions comparable: stations with repetitions, sets, start interval and start rule, as one text.</summary>
    /// <remarks>Sessions are pooled only where the keys are equal.</remarks>
    public string Key => string.Create(CultureInfo.InvariantCulture, $"{string.Join(" + ", Stations)} | {Sets} sets | T {StartInterval?.Value} s | {StartRule}");

    /// <summary>The bands that apply on a test date, fastest first: those with the latest valid-from date not after it.</summary>
    public IReadOnlyList<PerformanceBand> BandsOn(DateOnly date)
    {
        var applicable = Bands.Where(band => band.ValidFrom is null || band.ValidFrom <= date).ToList();
        var latest = applicable.Max(band => band.ValidFrom);
        return [.. applicable.Where(band => band.ValidFrom == latest).OrderBy(band => band.Low)];
    }

    /// <summary>The band that a total falls in on a test date, or null outside the banded range.</summary>
    public PerformanceBand? BandOf(Seconds total, DateOnly date) => BandsOn(date).FirstOrDefault(band => band.Contains(total));

    /// <summary>The protocol's name.</summary>
    public override string ToString() => Name;
}
