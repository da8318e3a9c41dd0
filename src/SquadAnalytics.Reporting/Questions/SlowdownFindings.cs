using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>
/// The findings of one question: why does this boxer slow within the test? From which set, at which station, how much rest was left,
/// what came before, and what would settle what stays open. No cause is named: times alone do not show it.
/// </summary>
public static class SlowdownFindings
{
    private const string SummaryMeasures = "Matthews et al. 1990";

    /// <summary>Puts the evidence in plain words, in the order in which a coach should meet it.</summary>
    public static Findings Of(SlowdownEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        IReadOnlyList<Finding> findings =
        [
            .. Explained(evidence, explanations => [ExplanationFindings.Answer(explanations, evidence.Format, Where(evidence))]),
            evidence.Named.Match(named => FromWhichSet(named, evidence.Format), Finding.Refused),
            .. evidence.Searched.Match(searched => Searched(searched, evidence), _ => []),
            evidence.Stations.Match(stations => AtWhichStation(stations, evidence.Format), Finding.Refused),
            evidence.Rest.Match(rest => RestLeft(rest, evidence.Format), Finding.Refused),
            .. evidence.Indices.Match(indices => Index(indices, evidence.Format), _ => []),
            evidence.Change.Match(change => Total(change, evidence), Finding.Refused),
            Circumstances(evidence.Context),
            .. Explained(evidence, ExplanationFindings.Open),
            evidence.Noise.Match(noise => WhatWouldSettleIt(noise, evidence), Finding.Refused),
        ];
        // Two parts may be refused for one reason: it is said once.
        return new Findings([.. findings.DistinctBy(finding => finding.Sentence)]);
    }

    // Without enough tests for the explanations the other findings already say what is missing.
    private static IEnumerable<Finding> Explained(SlowdownEvidence evidence, Func<ExplanationsResult, IEnumerable<Finding>> findings) =>
        evidence.Explanations is { } asked && asked.TryGet(out var explanations) ? findings(explanations) : [];

    private static Finding FromWhichSet(LateSlowdownResult named, NumberFormat format) =>
        new(Sentences.LateSets(named, format)) { Estimate = named.LateContrast, Source = SummaryMeasures };

    // The station that stands out, for the answer in one sentence.
    private static string? Where(SlowdownEvidence evidence) =>
        evidence.Stations.TryGet(out var stations) && stations.Concentrated.MaxBy(row => row.Excess.Value) is { } row && row.Share.TryGet(out var share)
            ? $"{NumberFormat.Fixed(100 * share.Value, 0)} % at {row.Name} in the {Sentences.Plural(stations.SessionIds.Count, "test")} with station times" : null;

    // Shown only where looking for the set says something else than the set that was named.
    private static IReadOnlyList<Finding> Searched(LateSlowdownResult searched, SlowdownEvidence evidence)
    {
        var agrees = evidence.Named.TryGet(out var named) && named.AfterSet == searched.AfterSet;
        return agrees ? [] : [new Finding(Sentences.LateSets(searched, evidence.Format)) { Estimate = searched.LateContrast, Source = SummaryMeasures }];
    }

    private static Finding AtWhichStation(StationSharesResult stations, NumberFormat format)
    {
        var concentrated = stations.Concentrated.OrderByDescending(row => row.Excess.Value).ToList();
        var sentence = concentrated.Count == 0
            ? $"The slow-down of {format.Value(stations.Slowdown)} is spread over the stations: none slows clearly more than its part of the set."
            : $"Of the slow-down of {format.Value(stations.Slowdown)} in the {Sentences.Plural(stations.SessionIds.Count, "test")} with station times, {Sentences.List([.. concentrated.Select(row => Part(row, format))])}.";
        return new Finding(sentence)
        {
            Estimate = concentrated.Count == 0 ? stations.Slowdown : concentrated[0].Slowdown,
            Method = $"station times of {Sentences.Plural(stations.SessionIds.Count, "session")}, late minus early sets",
            Source = "Fieller 1954 for the share",
            Notes = stations.ReadingRules,
        };
    }

    private static string Part(StationShare row, NumberFormat format) =>
        $"{row.Name} took {format.WithInterval(row.Slowdown)}{row.Share.Match(share => $" ({NumberFormat.Fixed(100 * share.Value, 0)} % of it)", _ => "")}";

    private static Finding RestLeft(WorkAndRestResult rest, NumberFormat format)
    {
        var rests = rest.Sets.Where(set => set.Rest is not null).ToList();
        var sentence = rest.HasNoRest
            ? $"At least one set of the latest test left no rest before the next start signal (one start every {NumberFormat.SetTime(rest.StartInterval)})."
            : $"On a start every {NumberFormat.SetTime(rest.StartInterval)} the latest test left {format.Time(rests[0].Rest!.Value)} of rest after set 1 and {format.Time(rests[^1].Rest!.Value)} after set {rests[^1].Set.ToString(System.Globalization.CultureInfo.InvariantCulture)}.";
        return new Finding(sentence)
        {
            Method = "clock arithmetic: rest is the start interval less the work time",
            Notes = ["Rest and work time are one quantity on a fixed clock: less rest follows from slower sets as much as the other way round. A session at fixed rest would tell them apart."],
        };
    }

    private static IReadOnlyList<Finding> Index(FatigueIndicesResult indices, NumberFormat format)
    {
        if (indices.DecrementExceedsScatter is not { } exceeds) return [];
        var scatter = indices.NoiseFloor is { } floor ? $": scatter alone gives about {NumberFormat.Fixed(floor.DecrementExpected.Value, 1)} %, seldom more than {NumberFormat.Fixed(floor.DecrementLimit.Value, 1)} %" : "";
        var reading = (exceeds ? "more than set-to-set scatter alone would give" : "no more than set-to-set scatter alone would give") + scatter;
        var sets = indices.Session.Protocol.Sets;
        var over = indices.Total.Value - sets * indices.Session.TimesSeconds.Min();
        return [new Finding($"The latest test's percentage decrement is {format.Value(indices.Decrement)} (the total is {format.Time(new Seconds(over))} more than {Sentences.Plural(sets, "set")} at the best pace), {reading}.") { Estimate = indices.Decrement, Source = "Fitzsimons et al. 1993; Glaister et al. 2008" }];
    }

    private static Finding Total(AthleteChangeResult change, SlowdownEvidence evidence) =>
        new(Sentences.Change(evidence.Athlete, change, evidence.Format))
        {
            Estimate = change.Change,
            Source = "Hopkins 2000, 2004; Swinton et al. 2018",
            Notes = [$"Smallest worthwhile change: {evidence.Format.Value(change.Worthwhile.Estimate)}. With half of it the verdict is: {change.VerdictAtHalf.Words()}; with twice: {change.VerdictAtDouble.Words()}."],
        };

    private static Finding Circumstances(TestContextResult context)
    {
        var known = context.Measures.Where(measure => measure is { OnTheDay: not null, Usual: not null }).ToList();
        var events = context.Events.Select(item => $"{Words(item.Kind)} on {item.Date.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture)}").ToList();
        var sentence = known.Count == 0
            ? "Nothing was written down about the day of the latest test that could be compared with other days."
            : $"Before the latest test: {Sentences.List([.. known.Select(measure => $"{measure.Name} {NumberFormat.Fixed(measure.OnTheDay!.Value, Tables.Decimals(measure))} {(measure is { Unit: "rounds", OnTheDay: 1 } ? "round" : measure.Unit)} (usual {NumberFormat.Fixed(measure.Usual!.Value, Tables.Decimals(measure))})")])}{(events.Count > 0 ? $"; {Sentences.List(events)}" : "")}.";
        return new Finding(sentence) { Method = "median of the athlete's other tests", Notes = [Sentences.LoadUnits, .. context.Notes] };
    }

    private static Finding WhatWouldSettleIt(TypicalErrorResult noise, SlowdownEvidence evidence)
    {
        if (!evidence.Change.TryGet(out var change)) return new Finding($"Test noise is about {evidence.Format.Value(noise.Estimate)}.") { Estimate = noise.Estimate, Source = "Hopkins 2000", OverAthletes = noise.Athletes };
        var needed = NumberOfTests.Needed(noise, change.Worthwhile);
        return new Finding($"To know the total: {Sentences.MeanOfTests(noise, change.Worthwhile, evidence.Format)}. To learn whether the clock plays a part, do one session at fixed rest; to learn about the station, test it fresh and count clean repetitions.")
        {
            Estimate = needed,
            Source = "Hopkins 2000",
            OverAthletes = noise.Athletes,
        };
    }

    private static string Words(EventKind kind) => kind switch { EventKind.Bout => "bout", EventKind.WeighIn => "weigh-in", _ => "head knock, not cleared" };
}
