using System.Globalization;

namespace SquadAnalytics;

/// <summary>
/// The sessions that an analysis uses, and the count of those it does not: the one place where eligibility is decided.
/// </summary>
/// <remarks>
/// In this order: void sessions and sessions that were never started are left out; sessions of another protocol key are left out if one
/// was asked for, and refused otherwise; the first f sessions of each athlete are dropped as familiarisation; sessions outside the dates
/// are left out; incomplete sessions are left out and counted.
/// </remarks>
public sealed record SessionSelection
{
    private SessionSelection(IReadOnlyList<Session> sessions, SelectionOptions options)
    {
        Sessions = sessions;
        Options = options;
    }

    /// <summary>The eligible sessions by date and occasion.</summary>
    public IReadOnlyList<Session> Sessions { get; }

    /// <summary>The options that were applied.</summary>
    public SelectionOptions Options { get; }

    /// <summary>How many void sessions were left out.</summary>
    public int VoidLeftOut { get; private init; }

    /// <summary>How many sessions were left out because no set was started.</summary>
    public int NotStartedLeftOut { get; private init; }

    /// <summary>How many sessions of other protocol keys were left out.</summary>
    public int OtherProtocolsLeftOut { get; private init; }

    /// <summary>How many first sessions were dropped as familiarisation.</summary>
    public int FamiliarisationDropped { get; private init; }

    /// <summary>How many incomplete sessions were left out.</summary>
    public int IncompleteLeftOut { get; private init; }

    /// <summary>What was left out and why, in sentences; empty where nothing was.</summary>
    public IReadOnlyList<string> Notes { get; private init; } = [];

    /// <summary>Selects from sessions of any number of athletes.</summary>
    /// <param name="sessions">Sessions in any order.</param>
    /// <param name="options">Which to use; null for the defaults.</param>
    /// <returns>The selection (possibly empty), or <see cref="Refusal.MixedProtocols"/> where the protocol keys differ and none was asked for.</returns>
    /// <exception cref="ArgumentException">The first day comes after the last.</exception>
    public static Answer<SessionSelection> Of(IReadOnlyList<Session> sessions, SelectionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        options ??= new SelectionOptions();
        if (options.From > options.To)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The first day, {options.From:yyyy-MM-dd}, comes after the last, {options.To:yyyy-MM-dd}."), nameof(options));
        var valid = sessions.Where(session => session is { IsVoid: false, IsStarted: true })
            .OrderBy(session => session.Date).ThenBy(session => session.Occasion).ThenBy(session => session.Id, StringComparer.Ordinal).ToList();
        var comparable = valid;
        if (options.Protocol is { } protocol)
        {
            // The key is a text: made once per protocol, not once per session.
            var same = Protocols(valid).Where(other => other.Key == protocol.Key).ToHashSet(ReferenceEqualityComparer.Instance);
            comparable = valid.FindAll(session => same.Contains(session.Protocol));
        }

        var keys = Protocols(comparable).Select(other => other.Key).Distinct(StringComparer.Ordinal).Count();
        if (keys > 1)
            return new NotEstimable("sessions taken together", Refusal.MixedProtocols, "sessions of one protocol", string.Create(CultureInfo.InvariantCulture, $"{keys} protocols that are not comparable"));

        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var trained = comparable.FindAll(session => (seen[session.AthleteId] = seen.GetValueOrDefault(session.AthleteId) + 1) > options.Familiarisation);
        var dated = trained.FindAll(session => (options.From is null || session.Date >= options.From) && (options.To is null || session.Date <= options.To));
        var complete = dated.FindAll(session => session.IsComplete);
        var selection = new SessionSelection(complete, options)
        {
            VoidLeftOut = sessions.Count(session => session.IsVoid),
            NotStartedLeftOut = sessions.Count(session => !session.IsVoid) - valid.Count,
            OtherProtocolsLeftOut = valid.Count - comparable.Count,
            FamiliarisationDropped = comparable.Count - trained.Count,
            IncompleteLeftOut = dated.Count - complete.Count,
        };
        return selection with { Notes = [.. selection.Describe()] };
    }

    /// <summary>Selects from sessions of any number of athletes, for a question that nothing can be said about without one.</summary>
    /// <param name="sessions">Sessions in any order.</param>
    /// <param name="options">Which to use; null for the defaults.</param>
    /// <returns>The selection with one session or more, or <see cref="Refusal.TooFewSessions"/> with what was left out and why.</returns>
    /// <exception cref="ArgumentException">The first day comes after the last.</exception>
    public static Answer<SessionSelection> NotEmpty(IReadOnlyList<Session> sessions, SelectionOptions? options = null) => Of(sessions, options).Match<Answer<SessionSelection>>(
        found => found.Sessions.Count > 0 ? found : new NotEstimable("this question", Refusal.TooFewSessions, $"a complete test{(options?.Protocol is { } protocol ? $" of {protocol.Name}" : "")}", string.Join(". ", ["none", .. found.Notes]).TrimEnd('.')),
        refused => refused);

    /// <summary>Selects from sessions of one athlete.</summary>
    /// <param name="sessions">Sessions of one athlete in any order.</param>
    /// <param name="options">Which to use; null for the defaults.</param>
    /// <exception cref="ArgumentException">The sessions belong to more than one athlete.</exception>
    public static Answer<SessionSelection> OfOneAthlete(IReadOnlyList<Session> sessions, SelectionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        var athletes = sessions.Select(session => session.AthleteId).Distinct(StringComparer.Ordinal).ToList();
        return athletes.Count <= 1
            ? Of(sessions, options)
            : throw new ArgumentException($"This analysis is of one athlete, but the sessions belong to {athletes.Count}: {string.Join(", ", athletes)}.", nameof(sessions));
    }

    /// <summary>How many sessions were used and left out.</summary>
    public override string ToString() => string.Join(" ", [string.Create(CultureInfo.InvariantCulture, $"{Sessions.Count} sessions used."), .. Notes]);

    private static IEnumerable<Protocol> Protocols(List<Session> sessions) => sessions.Select(session => session.Protocol).Distinct<Protocol>(ReferenceEqualityComparer.Instance);

    private IEnumerable<string> Describe()
    {
        var first = Options.Familiarisation == 1 ? "the first" : string.Create(CultureInfo.InvariantCulture, $"the first {Options.Familiarisation}");
        string[] left =
        [
            .. Counted(VoidLeftOut, "void"), .. Counted(NotStartedLeftOut, "not started"), .. Counted(OtherProtocolsLeftOut, "of another protocol"),
            .. Counted(FamiliarisationDropped, $"as familiarisation ({first} of each athlete)"), .. Counted(IncompleteLeftOut, "incomplete"),
        ];
        if (left.Length > 0) yield return $"Tests left out: {string.Join(", ", left)}.";
        var steps = Sessions.Where(session => session.TimingResolution is not null).Select(session => session.TimingResolution!.Value.Value).Distinct().Order().ToList();
        if (steps.Count > 1)
        {
            // Rounding to a step h adds a variance of h²/12 to every set.
            var sets = Sessions[0].Protocol.Sets;
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Times were written in steps from {steps[0]} to {steps[^1]} s: rounding alone gives a total an SD of {Math.Sqrt(sets / 12.0) * steps[0]:0.00} to {Math.Sqrt(sets / 12.0) * steps[^1]:0.00} s.");
        }
    }

    private static string[] Counted(int count, string reason) => count == 0 ? [] : [string.Create(CultureInfo.InvariantCulture, $"{count} {reason}")];
}
