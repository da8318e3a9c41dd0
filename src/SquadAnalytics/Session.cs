using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>One administration of the test to one athlete on one date.</summary>
public sealed record Session
{
    /// <summary>Makes a session.</summary>
    /// <param name="id">Its id, unique in the logbook.</param>
    /// <param name="athleteId">The athlete's id.</param>
    /// <param name="date">The test date.</param>
    /// <param name="protocol">The protocol version.</param>
    /// <param name="sets">The sets, in order, numbered from 1 without gaps; at most the protocol's number. Sets that are left out were not recorded.</param>
    /// <exception cref="ArgumentException">Sets are out of order, repeated, or more than the protocol has.</exception>
    public Session(string id, string athleteId, DateOnly date, Protocol protocol, IReadOnlyList<SetTime> sets)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(sets);
        Id = Require.Text(id);
        AthleteId = Require.Text(athleteId);
        Date = date;
        Protocol = protocol;
        if (sets.Count > protocol.Sets)
            throw new ArgumentException($"Session '{id}' has {sets.Count} sets, but protocol '{protocol.Name}' has {protocol.Sets}.", nameof(sets));
        for (var k = 0; k < sets.Count; k++)
        {
            if (sets[k].Set != k + 1)
                throw new ArgumentException($"Sets of session '{id}' must be numbered 1 to {sets.Count} in order; place {k + 1} holds set {sets[k].Set}.", nameof(sets));
        }

        Sets = [.. sets, .. Enumerable.Range(sets.Count + 1, protocol.Sets - sets.Count).Select(set => new SetTime(set, SetStatus.NotRecorded))];
        TimesSeconds = [.. Sets.Where(set => set.Work is not null).Select(set => set.Work!.Value.Value)];
    }

    /// <summary>Makes a complete session from its work times.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="athleteId">The athlete's id.</param>
    /// <param name="date">The test date.</param>
    /// <param name="protocol">The protocol version.</param>
    /// <param name="timesSeconds">Work time of each set in order, in seconds.</param>
    public static Session FromTimes(string id, string athleteId, DateOnly date, Protocol protocol, params IReadOnlyList<double> timesSeconds) =>
        new(id, athleteId, date, protocol, [.. timesSeconds.Select((time, index) => new SetTime(index + 1, new Seconds(time)))]);

    /// <summary>The id that a new session gets: athlete, date, protocol and occasion, which together tell sessions apart.</summary>
    /// <param name="athleteId">The athlete's id.</param>
    /// <param name="date">The test date.</param>
    /// <param name="protocolId">The protocol version's id.</param>
    /// <param name="occasion">Which test of that protocol on that date it is, from 1.</param>
    public static string IdFor(string athleteId, DateOnly date, string protocolId, int occasion = 1) =>
        string.Create(CultureInfo.InvariantCulture, $"{athleteId}-{date:yyyyMMdd}-{protocolId}-{occasion}");

    /// <summary>Its id, unique in the logbook.</summary>
    public string Id { get; init => field = Require.Text(value); }

    /// <summary>The athlete's id.</summary>
    public string AthleteId { get; }

    /// <summary>The test date.</summary>
    public DateOnly Date { get; }

    /// <summary>Which test of the same protocol on that date it was, from 1.</summary>
    public int Occasion { get; init; } = 1;

    /// <summary>The protocol version. It can be put in the place of another with as many sets.</summary>
    public Protocol Protocol
    {
        get;
        init => field = Sets is null || value.Sets == Sets.Count
            ? value
            : throw new ArgumentException($"Session '{Id}' has {Sets.Count} sets, but protocol '{value.Name}' has {value.Sets}.", nameof(value));
    }

    /// <summary>All sets of the protocol in order; sets that were not recorded are present and say so.</summary>
    public IReadOnlyList<SetTime> Sets { get; }

    /// <summary>Station times, in any order; empty where none were taken.</summary>
    public IReadOnlyList<StationTime> Stations { get; init; } = [];

    /// <summary>The step in which times were written: 1, 0.1 or 0.01 s; null where it is not known.</summary>
    public Seconds? TimingResolution { get; init; }

    /// <summary>Who or what took the times.</summary>
    public string? Timer { get; init; }

    /// <summary>Where the test was done.</summary>
    public string? Place { get; init; }

    /// <summary>Air temperature in degrees Celsius.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Why the session is left out of analyses, or null where it counts. A void session is kept and can be taken back.</summary>
    public string? VoidReason { get; init; }

    /// <summary>Whether the session is left out of analyses.</summary>
    public bool IsVoid => VoidReason is not null;

    /// <summary>Whether a set was started.</summary>
    public bool IsStarted => Sets.Any(set => set.Status is not (SetStatus.NotRecorded or SetStatus.NotStarted));

    /// <summary>Work times of the timed sets in order, in seconds.</summary>
    public IReadOnlyList<double> TimesSeconds { get; }

    /// <summary>The set that ended the test by missing the next start, or null: only under <see cref="StartRule.StopAtMissedStart"/>, where work times above the start interval end it.</summary>
    public int? EndedAfterSet => Protocol is { StartRule: StartRule.StopAtMissedStart, StartInterval: { } interval }
        ? Sets.Take(Protocol.Sets - 1).FirstOrDefault(set => set.Work > interval)?.Set
        : null;

    /// <summary>Whether every set of the protocol has a time and none missed a start that ends the test.</summary>
    public bool IsComplete => TimesSeconds.Count == Protocol.Sets && EndedAfterSet is null;

    /// <summary>The session total W, the sum of all work times in seconds, or a refusal where a set is missing.</summary>
    /// <remarks>To 10^-9 s: added as they are, 62.4 63.1 64.0 69.2 70.3 and 63.9 62.5 64.2 68.6 69.8 would differ in the last bit and not tie.</remarks>
    public Answer<Seconds> Total => IsComplete
        ? new Seconds(Math.Round(TimesSeconds.Sum(), 9))
        : new NotEstimable("the session total", Refusal.IncompleteSession, Protocol.Sets, EndedAfterSet ?? TimesSeconds.Count, "timed sets");

    /// <summary>Date and times, for example <c>2031-03-04: 62.4 63.1 64.0</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}: {string.Join(' ', Sets.Select(set => set.Work?.Value.ToString("0.0#", CultureInfo.InvariantCulture) ?? "-"))}");
}
