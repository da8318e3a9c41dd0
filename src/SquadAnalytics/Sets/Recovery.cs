using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Fits the recovery recursion: could the rolling clock by itself explain the slow-down?</summary>
public static class Recovery
{
    private const int Needed = 10;
    private const double Shortest = 15;
    private const double Longest = 600;
    private const int GridPoints = 241;

    /// <summary>Fits the recursion to sessions of one athlete, from the rests as they were.</summary>
    /// <remarks>
    /// F_1 = 0, t_k = β + a F_k + e_k, F_(k+1) = (F_k + 1) exp(-r_k / τ), F carried fatigue, t_k the time of set k and r_k the rest after it, in seconds: for each τ from 15 to 600 s on a logarithmic grid β and a are
    /// least squares (variable projection, from memory: Golub and Pereyra 1973, SIAM J Numer Anal 10:413-432), a at least 0. Confidence set
    /// of τ: RSS(τ) at most RSS_min (1 + q_F / (N - 3)), N the sets of all sessions and q_F the F quantile. a and τ trade off against each other; with fewer than 10 sessions the set reaches
    /// the edge of the grid more often than not. From F_1 = 0 the recursion is concave and cannot jump: a late jump is evidence against
    /// the clock alone. Exponential recovery follows Bogdanis et al. 1995, J Physiol 482:467-480, and Skiba et al. 2012, Med Sci Sports
    /// Exerc 44:1526-1532; it is an analogy, for whole-body circuits are not cycling. The honest answer to "is it the rest?" is a session
    /// at fixed rest.
    /// Assumes independent normal set times about the recursion.
    /// </remarks>
    /// <returns>The fit, or <see cref="Refusal.TooFewSessions"/> below 10 sessions with rest after every set, <see cref="Refusal.IntervalUnknown"/>,
    /// <see cref="Refusal.WeaklyIdentified"/> where the set of τ touches an edge, <see cref="Refusal.BoundarySolution"/> where a is 0, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<RecoveryResult> Fit(IReadOnlyList<Session> sessions, RecoveryOptions? options = null)
    {
        options ??= new RecoveryOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    /// <summary>β, a and the residual sum of squares for one τ.</summary>
    internal static RecoveryFit At(IReadOnlyList<IReadOnlyList<ClockSet>> clocks, double timeConstant)
    {
        var count = clocks.Sum(clock => clock.Count);
        double[] fatigues = new double[count], times = new double[count];
        var place = 0;
        foreach (var clock in clocks)
        {
            double fatigue = 0;
            foreach (var set in clock)
            {
                fatigues[place] = fatigue;
                times[place++] = set.Work.Value;
                fatigue = (fatigue + 1) * Math.Exp(-(set.Rest?.Value ?? 0) / timeConstant);
            }
        }

        var line = StraightLine.Of(fatigues, times);
        return line.Slope > 0
            ? new RecoveryFit(timeConstant, line.Intercept, line.Slope, line.ResidualSumOfSquares)
            : new RecoveryFit(timeConstant, Descriptive.Mean(times), 0, (count - 1) * Descriptive.Variance(times));
    }

    /// <summary>The best fit of the grid and the confidence set of τ, from its lowest to its highest point.</summary>
    internal static (RecoveryFit Best, double Lower, double Upper) Region(IReadOnlyList<IReadOnlyList<ClockSet>> clocks, ConfidenceLevel level)
    {
        var n = clocks.Sum(clock => clock.Count);
        RecoveryFit[] grid = [.. Enumerable.Range(0, GridPoints).Select(point => At(clocks, Shortest * Math.Pow(Longest / Shortest, point / (GridPoints - 1.0))))];
        var best = grid.MinBy(fit => fit.ResidualSumOfSquares);
        var bound = best.ResidualSumOfSquares * (1 + FDistribution.Quantile(level.Fraction, 1, n - 3) / (n - 3));
        RecoveryFit[] inside = [.. grid.Where(fit => fit.ResidualSumOfSquares <= bound)];
        return (best, inside.Min(fit => fit.TimeConstant), inside.Max(fit => fit.TimeConstant));
    }

    private static Answer<RecoveryResult> Of(SessionSelection selection, RecoveryOptions options)
    {
        if (selection.Sessions.Count > 0 && selection.Sessions[0].Protocol.StartInterval is null)
            return new NotEstimable("the recovery model", Refusal.IntervalUnknown, "the start interval of the protocol", "none");
        List<IReadOnlyList<ClockSet>> clocks = [.. selection.Sessions.Select(session => RollingClock.Run([.. session.TimesSeconds], session.Protocol.Sets, session.Protocol.StartInterval!.Value.Value))];
        var left = clocks.RemoveAll(clock => !options.IncludeNoRest && clock.Any(set => set.Rest?.Value == 0));
        if (clocks.Count < Needed) return new NotEstimable("the recovery model", Refusal.TooFewSessions, Needed, clocks.Count, "eligible sessions with rest after every set");
        var n = clocks.Sum(clock => clock.Count);
        var (best, lower, upper) = Region(clocks, options.Level);
        if (best.PerFatigue == 0) return new NotEstimable("the recovery model", Refusal.BoundarySolution, "sets that slow with carried fatigue", "none");
        if (lower <= Shortest || upper >= Longest * (1 - 1e-12))
        {
            return new NotEstimable("the recovery model", Refusal.WeaklyIdentified, "a set of time constants inside 15 to 600 s",
                string.Create(CultureInfo.InvariantCulture, $"one from {lower:0} to {upper:0} s"));
        }

        return Result(selection, best, new Interval(lower, upper, options.Level), clocks.Count, n, left);
    }

    private static RecoveryResult Result(SessionSelection selection, RecoveryFit best, Interval timeConstants, int sessions, int n, int left)
    {
        var protocol = selection.Sessions[0].Protocol;
        var interval = protocol.StartInterval!.Value;
        var parameters = new RecoveryParameters(new Seconds(best.Fresh), new Seconds(best.PerFatigue), new Seconds(best.TimeConstant));
        return new RecoveryResult
        {
            Parameters = parameters,
            TimeConstant = new Estimate(best.TimeConstant, Unit.Seconds, n, "least squares over a logarithmic grid, profile F set") { Interval = timeConstants, DegreesOfFreedom = n - 3 },
            ClockPenalty = new Estimate(parameters.ClockPenalty(protocol.Sets, interval).Value, Unit.Seconds, n, "predicted total on the clock minus at a fixed rest of start interval less fresh set"),
            FeedbackGains = parameters.FeedbackGains(protocol.Sets, interval),
            Residual = new Estimate(Math.Sqrt(best.ResidualSumOfSquares / (n - 3)), Unit.Seconds, n, "residual SD") { DegreesOfFreedom = n - 3 },
            Selection = selection,
            Notes =
            [
                "Seconds per unit of fatigue and time constant trade off; start intervals that differ between sessions would separate them.",
                "The recursion cannot jump: a late jump is evidence against the clock alone. Only a session at fixed rest answers whether it is the rest.",
                .. left > 0 ? [string.Create(CultureInfo.InvariantCulture, $"{left} sessions with a set that left no rest: left out; {sessions} used.")] : Array.Empty<string>(),
                .. selection.Notes,
            ],
        };
    }
}

/// <summary>β, a and the residual sum of squares of the recovery recursion for one τ.</summary>
internal readonly record struct RecoveryFit(double TimeConstant, double Fresh, double PerFatigue, double ResidualSumOfSquares);
