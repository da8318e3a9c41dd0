using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Splits the slow-down from early to late sets exactly into stations and transitions.</summary>
public static class StationShares
{
    private const int IntervalNeeds = 4;
    private const string NoInterval = "No interval: needs 4 sessions with station times.";
    /// <summary>Decomposes the slow-down of one athlete over sessions.</summary>
    /// <remarks>
    /// t_k = Σ_j s_kj + x_k with the time t_k of set k, station times s_kj and transitions x_k, in seconds. For early sets E (1 to b) and late sets L: Δ = mean_L t - mean_E t =
    /// Σ_j Δ_j + Δ_x, identically. Share_j = Δ_j / Δ (Fieller); relative slowing 100 Δ_j / E_j; excess_j = Δ_j - Δ E_j / E, whose interval
    /// linearises the ratio E_j / E. Intervals: t over m sessions, m - 1 degrees of freedom. Sources: algebra; Fieller 1954 (from memory).
    /// A session whose splits exceed a set's time by more than the tolerance is a data problem and is left out; splits below the set time
    /// leave transitions, shown in their own row.
    /// Assumes independent sessions, normal in what a session contributes.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order; one is enough for the decomposition, 4 for intervals.</param>
    /// <param name="options">The set b, level and selection.</param>
    /// <returns>The rows, or <see cref="Refusal.TooFewSessions"/> with no eligible session, <see cref="Refusal.StationsMissing"/> where none
    /// has all station times, <see cref="Refusal.MixedProtocols"/>. Shares are refused with <see cref="Refusal.TooFewSessions"/> below 4
    /// sessions and with <see cref="Refusal.RatioUnstable"/> where the whole slow-down may be 0.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or b is not a set before the last.</exception>
    public static Answer<StationSharesResult> Fit(IReadOnlyList<Session> sessions, StationSharesOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var selected = SessionSelection.OfOneAthlete(sessions, options.Selection);
        if (!selected.TryGet(out var selection)) return selected.Refusal!;
        if (selection.Sessions.Count == 0) return new NotEstimable("the station shares", Refusal.TooFewSessions, 1, 0, "eligible sessions");
        LateSlowdown.CheckSet(options.AfterSet, selection.Sessions[0].Protocol.Sets, nameof(options));
        var consistent = selection.Sessions.Where(session => !StationTable.IsContradictory(session, options.Tolerance.Value)).ToList();
        StationTable[] tables = [.. consistent.Select(session => StationTable.Of(session, options.AfterSet)).OfType<StationTable>()];
        if (tables.Length == 0)
            return new NotEstimable("the station shares", Refusal.StationsMissing, "all station times of a session, within its set times", $"none in {selection.Sessions.Count} sessions");
        var contradictory = selection.Sessions.Count - consistent.Count;
        var without = consistent.Count - tables.Length;
        string[] notes =
        [
            .. selection.Notes,
            .. without > 0 ? [$"{without} without all station times: left out."] : Array.Empty<string>(),
            .. contradictory > 0 ? [$"{contradictory} with splits that exceed the set time by more than {options.Tolerance}: left out, to be checked."] : Array.Empty<string>(),
        ];
        return new StationSharesResult
        {
            AfterSet = options.AfterSet,
            Slowdown = Mean([.. tables.Select(table => table.LateSet - table.EarlySet)], options.Level, "mean late set minus mean early set over sessions").WithNotes(notes),
            Rows = Rows(tables, selection.Sessions[0].Protocol, options.Level),
            Selection = selection,
            SessionIds = [.. tables.Select(table => table.SessionId)],
            WithoutStationsLeftOut = without,
            ContradictoryLeftOut = contradictory,
            Level = options.Level,
        };
    }

    private static StationShare[] Rows(StationTable[] tables, Protocol protocol, ConfidenceLevel level)
    {
        var rows = Enumerable.Range(0, protocol.Stations.Count + 1).ToArray();
        Estimate[] excess = [.. rows.Select(row => Excess(tables, row, level))];
        var adjusted = tables.Length < IntervalNeeds ? null : MultipleTesting.Holm([.. excess.Select(OneSided)]);
        return [.. rows.Select(row => Row(tables, protocol, row, level, excess[row],
            adjusted is null ? null : new Estimate(adjusted[row], Unit.Probability, tables.Length, "one-sided t test, Holm's adjustment over all rows")))];
    }

    private static StationShare Row(StationTable[] tables, Protocol protocol, int row, ConfidenceLevel level, Estimate excess, Estimate? excessPValue)
    {
        var isStation = row < protocol.Stations.Count;
        var name = isStation ? protocol.Stations[row].Name : "transitions";
        double[] early = [.. tables.Select(table => table.Early[row])];
        double[] slowdown = [.. tables.Select(table => table.Late[row] - table.Early[row])];
        double[] whole = [.. tables.Select(table => table.LateSet - table.EarlySet)];
        var before = Descriptive.Mean(early);
        return new StationShare
        {
            Station = isStation ? row + 1 : null,
            Name = name,
            Early = Mean(early, level, "mean of the early sets over sessions"),
            Late = Mean([.. tables.Select(table => table.Late[row])], level, "mean of the late sets over sessions"),
            Slowdown = Mean(slowdown, level, "mean late minus mean early over sessions"),
            Share = tables.Length < IntervalNeeds
                ? new NotEstimable($"the share of {name}", Refusal.TooFewSessions, IntervalNeeds, tables.Length, "sessions with station times")
                : Share(slowdown, whole, level, $"the share of {name}"),
            RelativeSlowing = Math.Abs(before) > 1e-9
                ? new Estimate(100 * Descriptive.Mean(slowdown) / before, Unit.Percent, tables.Length, "100 slow-down / early time")
                : new NotEstimable($"the relative slowing of {name}", Refusal.RatioUnstable, "early time above 0", "0 s"),
            Excess = excess,
            ExcessPValue = excessPValue,
        };
    }

    private static Answer<Estimate> Share(double[] slowdown, double[] whole, ConfidenceLevel level, string measure)
    {
        var m = whole.Length;
        TEstimate Of(double[] values) => new("slow-down", Descriptive.Mean(values), Descriptive.StandardDeviation(values) / Math.Sqrt(m), m - 1);
        TEstimate station = Of(slowdown), all = Of(whole);
        var covariance = Descriptive.Covariance(slowdown, whole) / m;
        return FiellerRatio.Fit(station, all, covariance, level).Match<Answer<Estimate>>(
            fieller => new Estimate(fieller.Ratio, Unit.None, m, "ratio of means over sessions, Fieller interval")
            {
                StandardError = Math.Sqrt(Math.Max(0, station.StandardError * station.StandardError - 2 * fieller.Ratio * covariance + fieller.Ratio * fieller.Ratio * all.StandardError * all.StandardError)) / Math.Abs(all.Value),
                DegreesOfFreedom = m - 1,
                Interval = fieller.Interval,
            },
            _ => new NotEstimable(measure, Refusal.RatioUnstable, "a slow-down that is clearly not 0", "a slow-down whose interval holds 0"));
    }

    /// <summary>Excess of one row with the interval of its linearised form: its mean over sessions is exactly Δ_j - Δ E_j / E.</summary>
    private static Estimate Excess(StationTable[] tables, int row, ConfidenceLevel level)
    {
        var earlySet = Descriptive.Mean([.. tables.Select(table => table.EarlySet)]);
        var ratio = Descriptive.Mean([.. tables.Select(table => table.Early[row])]) / earlySet;
        var whole = Descriptive.Mean([.. tables.Select(table => table.LateSet - table.EarlySet)]);
        return Mean([.. tables.Select(table => table.Late[row] - table.Early[row] - ratio * (table.LateSet - table.EarlySet) - whole / earlySet * (table.Early[row] - ratio * table.EarlySet))],
            level, "slow-down minus an even share by early time, over sessions");
    }

    private static Estimate Mean(double[] values, ConfidenceLevel level, string method) => values.Length < IntervalNeeds
        ? new Estimate(Descriptive.Mean(values), Unit.Seconds, values.Length, method) { Notes = [NoInterval] }
        : TInterval.OfMean(values, Unit.Seconds, level, method);

    private static double OneSided(Estimate excess) => excess.PValue is { } p ? (excess.Value > 0 ? p / 2 : 1 - p / 2) : 1;
}
