using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Load;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

public static partial class Explanations
{
    private const int CircumstanceNeeds = 10;

    private static Candidate Drift(Evidence evidence)
    {
        var (n, b) = (evidence.Sets, evidence.After);
        var slope = evidence.Over(Contrasts.SlopeBesideStep, 1, Unit.SecondsPerSet, Text($"slope with a step after set {b} beside it, one-sample t over sessions"));
        return new Candidate(ExplanationCause.SteadyDrift, "steady drift", slope, evidence.Over(Contrasts.Line, 1, Unit.Seconds, "n/2 times the least-squares slope, over sessions"),
            "Further tests sharpen slope and step beside each other; a test with more sets separates them best, for a drift goes on and a step does not.")
        {
            PValue = OneSided(slope),
            Test = "one-sided t of the slope beside a step",
            Largest = n / 2.0 * slope.Upper,
            Supports = [$"Slope with the step held equal: {Short(slope)}."],
            Contradicts = slope.Lower <= 0 ? ["With a step beside it the slope may be 0."] : [],
        };
    }

    private static Candidate Break(Evidence evidence)
    {
        var (n, b, late) = (evidence.Sets, evidence.After, evidence.Late);
        var step = evidence.Over(Contrasts.Kink, 1 / Contrasts.KinkOfStep(n, b), Unit.Seconds, Text($"step after set {b} with a straight line beside it, one-sample t over sessions"))
            .WithNotes(late.KinkContrast.Notes);
        var (best, likeFastStart) = (evidence.Searched, evidence.LooksLikeFastStart);
        return new Candidate(ExplanationCause.LateBreak, Text($"late break after set {b}"), step, late.LateContrast,
            likeFastStart
                ? "A test started on purpose at the usual pace of set 2: if the step after set 1 goes, it was the start."
                : "Times within the set around the step, and a test at fixed rest: a step that stays there is not the clock; a bend instead of a step is a drift that grows.")
        {
            PValue = Math.Max(late.LatePValue.Value, late.KinkPValue.Value),
            Test = late.Choice == BreakChoice.NamedInAdvance ? "larger of the one-sided t tests of both contrasts" : "larger of the sign-flip p-values of both contrasts, the search charged",
            // A set found by looking has a step that looks too large: its upper limit stays on the safe side.
            Largest = step.Upper,
            IsAmbiguous = likeFastStart,
            Supports = [$"Step with the drift held equal: {Short(step)}."],
            Contradicts =
            [
                .. likeFastStart ? ["A step after set 1 and a first set that is always too fast are one shape."] : Array.Empty<string>(),
                .. best is not null && best.AfterSet != b && best.IsMoreThanSteadyDrift ? [Text($"A step after set {best.AfterSet} fits better than one after set {b}.")] : Array.Empty<string>(),
                .. step.Lower <= 0 ? ["A straight line fits about as well."] : Array.Empty<string>(),
            ],
        };
    }

    private static Candidate Start(Evidence evidence)
    {
        const string name = "too fast a start", separates = "Two tests started deliberately slower and two faster than usual, the order drawn by lot: a cost of the start follows it, a break does not.";
        var fit = StartingTooFast.Fit(evidence.Sessions, new StartingTooFastOptions { Level = evidence.Options.Level, Selection = evidence.Options.Selection });
        if (!fit.TryGet(out var result)) return Refused(ExplanationCause.FastStart, name, fit.Refusal!, separates);
        // θ is of logarithms: a start faster by one SD of ln t costs -θ SD in ln t of the later sets.
        var factor = -Math.Log(1 + result.StartSpread.Value / 100) * evidence.MeanSet;
        var slope = $"slope of the later sets on the first, date held equal, {Short(result.Slope)}";
        var accounts = Scaled(result.Slope, factor, Unit.Seconds, "cost in a later set of a start one SD faster than usual");
        return new Candidate(ExplanationCause.FastStart, name, result.Slope, accounts, separates)
        {
            PValue = OneSided(Scaled(result.Slope, -1, Unit.None, result.Slope.Method)),
            Test = "one-sided t of a slope of later sets on the first set below 0",
            Largest = accounts.Upper,
            Standing = evidence.LooksLikeFastStart && result.Slope.Upper >= 0 ? ExplanationStanding.CannotTell : null,
            Supports = result.Slope.Upper < 0 ? [$"Faster starts go with slower later sets ({slope})."] : [],
            Contradicts = result.Slope.Upper < 0 ? []
                : [$"Faster starts {(result.Slope.Lower > 0 ? "go with faster later sets" : "do not clearly go with slower later sets")} ({slope}; starts vary by {Short(result.StartSpread)}). A start that is too fast in every test leaves no trace here."],
        };
    }

    private static Candidate Station(Evidence evidence)
    {
        const string separates = "That station done fresh, its repetitions counted and filmed late in the test: a rest of its own or a lighter variant removes a local cause and leaves a general one.";
        var fit = StationShares.Fit(evidence.Sessions, new StationSharesOptions { AfterSet = evidence.After, Level = evidence.Options.Level, Selection = evidence.Options.Selection });
        if (!fit.TryGet(out var shares)) return Refused(ExplanationCause.OneStation, "one station", fit.Refusal!, separates);
        var rows = shares.Rows.Where(row => row is { Station: not null, ExcessPValue: not null }).ToList();
        if (rows.Count == 0) return Refused(ExplanationCause.OneStation, "one station", new NotEstimable("the excess of a station", Refusal.TooFewSessions, StepNeeds, shares.SessionIds.Count, "sessions with station times"), separates);
        var row = rows.MinBy(candidate => candidate.ExcessPValue!.Value)!;
        Estimate AmongStations(Estimate one) => TInterval.Of(
            one.Value, one.StandardError!.Value, one.DegreesOfFreedom!.Value, one.Unit, evidence.Options.Level, one.Observations, Text($"{one.Method}, limits for all {rows.Count} stations together"), choices: rows.Count);
        return new Candidate(ExplanationCause.OneStation, $"one station: {row.Name}", AmongStations(row.Excess), AmongStations(row.Slowdown), separates)
        {
            PValue = row.ExcessPValue!.Value,
            Test = "one-sided t of the excess over an even share, Holm's adjustment over stations and transitions",
            Largest = rows.Max(candidate => candidate.Excess.Upper),
            Supports = [$"{row.Name} slows by {Short(row.Slowdown)}, beyond an even share {Short(row.Excess)}."],
            Contradicts =
            [
                .. row.Excess.Lower <= 0 ? ["No station slows clearly by more than its part of the set."] : Array.Empty<string>(),
                .. shares.WithoutStationsLeftOut > 0 ? [Text($"{shares.WithoutStationsLeftOut} sessions have no station times.")] : Array.Empty<string>(),
            ],
        };
    }

    private static Candidate Clock(Evidence evidence)
    {
        const string name = "the clock's feedback", separates = "One test at fixed rest: what stays of the slow-down is not the clock. On one start interval less rest and slower sets are the same seconds.";
        var fit = Recovery.Fit(evidence.Sessions, new RecoveryOptions { Level = evidence.Options.Level, Selection = evidence.Options.Selection });
        string[] contradicts = evidence.Late.SlowsAfterSet
            ? ["Shorter rest can explain a gradual slowing, not the jump; how much of the gradual part it explains, tests on one start interval cannot tell."] : [];
        if (!fit.TryGet(out var result))
        {
            var refused = Refused(ExplanationCause.ClockFeedback, name, fit.Refusal!, separates) with { Contradicts = contradicts };
            return fit.Refusal!.Reason == Refusal.BoundarySolution ? refused with { Standing = ExplanationStanding.NotSupported, Contradicts = [.. contradicts, "Times do not grow with carried fatigue at all."] } : refused;
        }

        var protocol = evidence.Late.Selection.Sessions[0].Protocol;
        var interval = protocol.StartInterval!.Value;
        List<IReadOnlyList<ClockSet>> clocks = [.. evidence.Profiles.Select(profile => RollingClock.Run(profile, evidence.Sets, interval.Value)).Where(clock => clock.All(set => set.Rest?.Value != 0))];
        double At(double timeConstant)
        {
            var parameters = Recovery.At(clocks, timeConstant);
            var model = new RecoveryParameters(new Seconds(parameters.Fresh), new Seconds(parameters.PerFatigue), new Seconds(timeConstant));
            double Late(IReadOnlyList<Seconds> times) => Contrasts.Apply(Contrasts.Late(evidence.Sets, evidence.After), [.. times.Select(time => time.Value)]);
            return Late(model.OnTheClock(evidence.Sets, interval)) - Late(model.AtFixedRest(evidence.Sets, new Seconds(Math.Max(0, interval.Value - parameters.Fresh))));
        }

        var set = result.TimeConstant.Interval!.Value;
        double[] ends = [At(set.Lower), At(result.TimeConstant.Value), At(set.Upper)];
        var accounts = new Estimate(ends[1], Unit.Seconds, result.TimeConstant.Observations, "predicted slow-down on the clock minus at fixed rest, limits at the ends of the set of time constants")
        {
            Interval = new Interval(ends.Min(), ends.Max(), evidence.Options.Level),
        };
        return new Candidate(ExplanationCause.ClockFeedback, name, result.TimeConstant, accounts, separates)
        {
            Largest = ends.Max(),
            Supports = [$"A recovery model fits with {result.Parameters}; it is an analogy, not a measurement."],
            Contradicts = contradicts,
        };
    }

    private static Candidate Before(Evidence evidence)
    {
        var circumstance = evidence.Options.Circumstance;
        var name = $"what came before: {circumstance.Words()}";
        var separates = $"Tests with and without it, the order drawn by lot: a difference in {circumstance.Words()} that is not tied to the calendar.";
        if (circumstance.IsOutcome()) return Refused(ExplanationCause.Circumstance, name, circumstance.Refused($"the {circumstance.Words()}"), separates);
        var athlete = evidence.Late.Selection.Sessions[0].AthleteId;
        var days = evidence.Options.Days.Where(day => day.AthleteId == athlete).ToDictionary(day => day.Date);
        List<double> before = [], contrasts = [];
        foreach (var (session, contrast) in evidence.Late.Selection.Sessions.Zip(evidence.Late.Sessions))
        {
            if (Circumstances.Of(circumstance, days, session) is not { } value) continue;
            before.Add(value);
            contrasts.Add(contrast.LateContrast.Value);
        }

        if (before.Count < CircumstanceNeeds)
            return Refused(ExplanationCause.Circumstance, name, new NotEstimable($"the {circumstance.Words()}", Refusal.TooFewSessions, CircumstanceNeeds, before.Count, "tests with it written down"), separates);
        var fit = SpearmanCorrelation.Fit(before, contrasts);
        if (!fit.TryGet(out var correlation)) return Refused(ExplanationCause.Circumstance, name, fit.Refusal!, separates);
        var slope = LeastSquares.FitLine(before, contrasts).GetOrThrow().Coefficient("slope");
        var spread = Descriptive.StandardDeviation(before);
        var accounts = TInterval.Of(spread * slope.Value, spread * slope.StandardError, slope.DegreesOfFreedom, Unit.Seconds, evidence.Options.Level, before.Count, "seconds of slow-down per SD of the circumstance, least squares over tests");
        var p = correlation.PValue < 0.001 ? "p < .001" : Text($"p = {correlation.PValue:.000}");
        var relation = Text($"the more {circumstance.Words()}, the {(correlation.Rho < 0 ? "less" : "more")} slowing (Spearman's rho {correlation.Rho:0.00;−0.00}, {correlation.Observations} tests, {p})");
        return new Candidate(ExplanationCause.Circumstance, name, Rho(correlation, evidence.Options.Level), accounts, separates)
        {
            PValue = correlation.PValue,
            Test = "two-sided test of Spearman's correlation with the slow-down",
            Largest = Math.Max(Math.Abs(accounts.Lower!.Value), Math.Abs(accounts.Upper!.Value)),
            Supports = correlation.PValue <= evidence.Alpha ? [$"{relation}."] : [],
            Contradicts = [.. correlation.PValue <= evidence.Alpha ? Array.Empty<string>() : [$"No clear relation: {relation}."], "A correlation over one season may be that of both with the calendar."],
        };
    }

    private static Candidate Noise(Evidence evidence)
    {
        const double byHand = 0.2;
        var late = evidence.Late;
        var m = late.Sessions.Count;
        var (n, b) = (evidence.Sets, evidence.After);
        var step = late.Selection.Sessions.Max(session => session.TimingResolution?.Value);
        // Rounding to a step h has the variance h² / 12; hand timing an assumed SD of 0.2 s per set; c has the variance σ² (1/b + 1/(n - b)).
        var perSet = double.Hypot(byHand, (step ?? 0) / Math.Sqrt(12));
        var recording = new Estimate(perSet * Math.Sqrt((1.0 / b + 1.0 / (n - b)) / m), Unit.Seconds, m, "SD of the mean slow-down from rounding and hand timing (0.2 s per set, assumed)")
            .WithNotes(step is null ? ["The step in which times were written is not known; hand timing alone is counted."] : []);
        var bound = StudentTDistribution.UpperQuantile(evidence.Alpha, m - 1) * late.LateContrast.StandardError!.Value;
        var largest = late.LateContrast.Upper!.Value;
        return new Candidate(ExplanationCause.Noise, "noise and recording", recording, new Estimate(bound, Unit.Seconds, m, "largest mean slow-down that noise alone gives at one-sided level") { DegreesOfFreedom = m - 1 },
            "Further tests: noise averages out, a cause does not.")
        {
            Standing = largest < evidence.Matters ? ExplanationStanding.Supported : evidence.IsSlower ? ExplanationStanding.NotSupported : ExplanationStanding.CannotTell,
            Supports = [Text($"Noise alone gives a mean slow-down of up to {bound:0.00} s in {m} sessions.")],
            Contradicts = evidence.IsSlower ? [$"The slow-down of {Short(late.LateContrast)} is more than noise."] : [],
        };
    }

    /// <summary>An estimate in a sentence, with as many decimals as the width of its interval bears.</summary>
    private static string Short(Estimate estimate)
    {
        var symbol = estimate.Unit.Symbol() is { Length: > 0 } unit ? " " + unit : "";
        if (estimate.Interval is not { } interval) return Text($"{estimate.Value:0.0}{symbol}");
        var decimals = (int)Math.Clamp(1 - Math.Floor(Math.Log10(Math.Max(interval.HalfWidth, 1e-4))), 0, 4);
        string Fixed(double number) => number.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return $"{Fixed(estimate.Value)}{symbol}, {interval.ConfidenceLevel} interval {Fixed(interval.Lower)} to {Fixed(interval.Upper)}";
    }

    private static Candidate Refused(ExplanationCause cause, string name, NotEstimable refusal, string separates) =>
        new(cause, name, refusal, refusal, separates) { Contradicts = [refusal.ToString()] };

    private static Estimate Rho(SpearmanCorrelation correlation, ConfidenceLevel level) =>
        new(correlation.Rho, Unit.None, correlation.Observations, "Spearman's correlation with the slow-down over tests, Fisher's z interval") { Interval = correlation.Interval(level), PValue = correlation.PValue };

    private static Estimate Scaled(Estimate estimate, double factor, Unit unit, string method)
    {
        double[] limits = [factor * estimate.Lower!.Value, factor * estimate.Upper!.Value];
        return new Estimate(factor * estimate.Value, unit, estimate.Observations, method)
        {
            StandardError = Math.Abs(factor) * estimate.StandardError,
            DegreesOfFreedom = estimate.DegreesOfFreedom,
            Interval = new Interval(limits.Min(), limits.Max(), estimate.ConfidenceLevel!.Value),
            PValue = estimate.PValue,
        };
    }

    private static double OneSided(Estimate estimate) => estimate.PValue is not { } p ? 1 : estimate.Value > 0 ? p / 2 : 1 - p / 2;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
