using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>
/// One page in plain words for one boxer, or a parent: the latest test, whether it is a change, the tests so far, and the cautions.
/// Nobody else's times are on it; from the squad comes only how far this test strays by itself, where five athletes or more stand behind that.
/// </summary>
public sealed record Handout
{
    private Handout()
    {
    }

    /// <summary>The athlete.</summary>
    public required Athlete Athlete { get; init; }

    /// <summary>How the athlete is labelled: juniors by code, others by name.</summary>
    public required string Label { get; init; }

    /// <summary>The athlete's complete tests of the protocol by date, at least one; the last is the latest.</summary>
    public required IReadOnlyList<Session> Tests { get; init; }

    /// <summary>The change of the latest total, or why it cannot be judged.</summary>
    public required Answer<AthleteChangeResult> Change { get; init; }

    /// <summary>A line that says that the data are invented, or null.</summary>
    public string? DataNote { get; init; }

    /// <summary>The latest complete test.</summary>
    public Session Latest => Tests[^1];

    /// <summary>The test with the smallest total; of equal ones the first.</summary>
    public Session Fastest => Tests.MinBy(static session => session.TimesSeconds.Sum())!;

    /// <summary>Composes a handout.</summary>
    /// <param name="squad">The squad.</param>
    /// <param name="athleteId">Whom it is for.</param>
    /// <param name="options">What it is about; null for the defaults.</param>
    /// <returns>The handout, or <see cref="Refusal.TooFewSessions"/> where there is no complete test.</returns>
    /// <exception cref="ArgumentException">There is no such athlete.</exception>
    public static Answer<Handout> Of(Squad squad, string athleteId, HandoutOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(squad);
        options ??= new HandoutOptions();
        var athlete = squad.Athletes.FirstOrDefault(member => member.Id == athleteId) ?? throw new ArgumentException($"There is no athlete '{athleteId}' in the squad.", nameof(athleteId));
        var own = squad.SessionsOf(athleteId);
        var protocol = options.Protocol ?? own.LastOrDefault(static session => session is { IsVoid: false, IsComplete: true })?.Protocol;
        if (protocol is null) return new NotEstimable("the handout", Refusal.TooFewSessions, 1, 0, "complete tests");
        var tests = SessionSelection.OfOneAthlete(own, SelectionOptions.KeepAll with { Protocol = protocol }).GetOrThrow().Sessions;
        if (tests.Count == 0) return new NotEstimable($"the handout on {protocol.Name}", Refusal.TooFewSessions, 1, 0, "complete tests");
        return new Handout
        {
            Athlete = athlete,
            Label = athlete.LabelOn(tests[^1].Date),
            Tests = tests,
            Change = ChangeOf(squad, own, protocol, tests[^1].Date, options),
            DataNote = options.DataNote,
        };
    }

    /// <summary>The page: self-contained HTML that prints on one side of A4.</summary>
    public string ToHtml() => HandoutPage.Write(this);

    private static Answer<AthleteChangeResult> ChangeOf(Squad squad, IReadOnlyList<Session> own, Protocol protocol, DateOnly date, HandoutOptions options)
    {
        var selection = new SelectionOptions { Protocol = protocol };
        var worthwhile = options.Worthwhile ?? (protocol.BandsOn(date) is [var fastest, ..] ? SmallestWorthwhileChange.FromBand(fastest) : null);
        if (worthwhile is null) return new NotEstimable("the change", Refusal.NotComparable, "a smallest worthwhile change, which the bands of the protocol would give", "none");
        return TypicalError.Fit(squad, new() { Level = options.Level, Selection = selection }).Match(
            noise => noise.Athletes < SmallGroups.DefaultThreshold
                ? new NotEstimable("the change", Refusal.Suppressed, SmallGroups.DefaultThreshold, noise.Athletes, "athletes behind the noise of the test")
                : AthleteChange.Fit(own, noise, worthwhile, new() { Level = options.Level, Selection = selection }),
            static refusal => refusal);
    }
}
