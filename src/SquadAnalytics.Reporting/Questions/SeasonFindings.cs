using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>The findings of one question: what happened to a squad's test over a season? Written for a student's report.</summary>
public static class SeasonFindings
{
    /// <summary>Puts the season in plain words.</summary>
    public static Findings Of(SeasonEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        IReadOnlyList<Finding> findings =
        [
            evidence.Season.Match(season => Trend(season, evidence), Finding.Refused),
            .. evidence.Season.Match<IEnumerable<Finding>>(season => [Spread(season, evidence)], _ => []),
            evidence.Responses.Match(spread => Responses(spread, evidence), Finding.Refused),
            Reliability(evidence),
            evidence.Learning.Match(learning => Learning(learning, evidence), Finding.Refused),
            .. evidence.Load.Match<IEnumerable<Finding>>(load => load.Rows.Select(row => Load(row, evidence)), refused => [Finding.Refused(refused)]),
            .. evidence.Circumstances.Match<IEnumerable<Finding>>(model => Circumstances(model, evidence), refused => [Finding.Refused(refused)]),
            Design(evidence),
        ];
        return new Findings([.. findings.DistinctBy(finding => finding.Sentence)]);
    }

    private static string Statistic(Estimate estimate) =>
        estimate is { StandardError: { } error and > 0, DegreesOfFreedom: { } df, PValue: { } p }
            ? $", t({NumberFormat.Fixed(df, df == Math.Floor(df) ? 0 : 1)}) = {NumberFormat.Fixed(estimate.Value / error, 2)}, {NumberFormat.PValue(p)}"
            : "";

    private static string WithLimits(Estimate estimate, NumberFormat format) =>
        estimate.Interval is { } interval ? $" ({interval.ConfidenceLevel} CI [{NumberFormat.Fixed(interval.Lower, format.Decimals(estimate))}, {NumberFormat.Fixed(interval.Upper, format.Decimals(estimate))}])" : "";

    /// <summary>The limits of a change in the direction that its verb names: "fell by 0.49 s (95 % CI [0.37, 0.62])".</summary>
    private static string LimitsInDirection(Estimate change, NumberFormat format) =>
        WithLimits(change.Value < 0 ? Times(-1, change, change.Unit) : change, format);

    private static Finding Trend(SquadTrendResult season, SeasonEvidence evidence)
    {
        var slope = season.Slope;
        var direction = slope.Value < 0 ? "fell" : "rose";
        var size = NumberFormat.WithUnit(NumberFormat.Fixed(Math.Abs(slope.Value), evidence.Format.Decimals(slope)), Unit.Seconds);
        return new Finding($"The session total {direction} by {size} per week{LimitsInDirection(slope, evidence.Format)}{Statistic(slope)}: {NumberFormat.Fixed(Math.Abs(slope.Value * season.SpanWeeks), 1)} s {(slope.Value < 0 ? "faster" : "slower")} over {NumberFormat.Fixed(season.SpanWeeks, 0)} weeks{BesideNoise(evidence)}.")
        {
            Estimate = slope,
            OverAthletes = season.Athletes.Count,
            Source = "Patterson and Thompson 1971; Bates et al. 2015",
            Notes =
            [
                .. season.RelativeSlope.Match<IReadOnlyList<string>>(percent => [$"In percent: {evidence.Format.SignedChange(percent)}{WithLimits(percent, evidence.Format)}."], _ => []),
                .. season.MeanOfOwnSlopes.Match<IReadOnlyList<string>>(own => [$"Second opinion, plain t over the athletes' own slopes: {evidence.Format.Value(own)}{WithLimits(own, evidence.Format)}{Statistic(own)}."], _ => []),
                "Practice, season and training lie in one slope; without a control series it is not the effect of the training.",
                .. season.Notes,
            ],
        };
    }

    private static string BesideNoise(SeasonEvidence evidence) => evidence.Noise.Match(
        noise => $"; the noise of one test is {evidence.Format.Value(noise.Estimate)}, the smallest worthwhile change {evidence.Format.Value(evidence.Worthwhile.Estimate)}", _ => "");

    private static Finding Spread(SquadTrendResult season, SeasonEvidence evidence) => new($"Athletes differ in level by an SD of {evidence.Format.WithInterval(season.LevelSpread)}; a test scatters about its athlete's line by an SD of {evidence.Format.WithInterval(season.ResidualStandardDeviation)}.")
    {
        Estimate = season.LevelSpread,
        OverAthletes = season.Athletes.Count,
        Source = "Bates et al. 2015",
        Notes =
        [
            season.SlopeSpread.Match(spread => $"SD of slopes between athletes: {evidence.Format.WithInterval(spread)}.", Sentences.Refusal),
            $"In the model that was kept, {season.Form.Words()}.",
        ],
    };

    private static Finding Responses(ResponseSpreadResult spread, SeasonEvidence evidence) => new(
        spread.IsClear
            ? $"Athletes' seasons differ by more than the noise of the test: SD of individual responses {evidence.Format.WithInterval(spread.StandardDeviation)}."
            : $"The tests do not show that athletes respond differently: SD of individual responses {evidence.Format.WithInterval(spread.StandardDeviation)}.")
    {
        Estimate = spread.StandardDeviation,
        OverAthletes = spread.StandardDeviation.Observations,
        Source = "Atkinson and Batterham 2015; Hopkins 2015",
        Notes = [.. spread.Notes, "Nobody is labelled by it."],
    };

    private static Finding Reliability(SeasonEvidence evidence)
    {
        if (!evidence.Noise.TryGet(out var noise)) return Finding.Refused(evidence.Noise.Refusal!);
        var variation = noise.Variation.Match(percent => $", CV {evidence.Format.Value(percent)}{WithLimits(percent, evidence.Format)}", _ => "");
        var correlation = evidence.Correlation.Match(icc => $", ICC(A,1) = {Coefficient(icc.Agreement)}", _ => "");
        return new Finding($"Reliability: typical error {evidence.Format.Value(noise.Estimate)}{WithLimits(noise.Estimate, evidence.Format)}{variation}{correlation}.")
        {
            Estimate = noise.Estimate,
            OverAthletes = evidence.Correlation.Match(icc => Math.Min(noise.Athletes, icc.Athletes), _ => noise.Athletes),
            Source = "Hopkins 2000; McGraw and Wong 1996",
            Notes =
            [
                $"Against a smallest worthwhile change of {evidence.Format.Value(evidence.Worthwhile.Estimate)}: {SignalAndNoise.Summarize(noise, evidence.Worthwhile).Word.Words()}.",
                noise.Estimate.Notes[0],
                .. evidence.Correlation.Match<IReadOnlyList<string>>(_ => ["An intraclass correlation depends on how mixed the squad is."], refused => [Sentences.Refusal(refused)]),
            ],
        };
    }

    private static string Coefficient(Estimate icc) => icc.Interval is { } interval ? $"{Short(icc.Value)} ({interval.ConfidenceLevel} CI [{Short(interval.Lower)}, {Short(interval.Upper)}])" : Short(icc.Value);

    private static string Short(double coefficient)
    {
        var text = NumberFormat.Fixed(coefficient, 2);
        return text.StartsWith("0.", StringComparison.Ordinal) ? text[1..] : text;
    }

    private static Finding Learning(FamiliarisationResult learning, SeasonEvidence evidence)
    {
        var first = learning.Changes[0];
        return new Finding(first.Match(
            step => $"While the test is learnt: the second test was on average {evidence.Format.Change(step)} than the first ({step.ConfidenceLevel} interval {evidence.Format.ChangeLimits(step)}); {Dropped(evidence)} dropped here.",
            Sentences.Refusal))
        {
            Estimate = first.Match<Estimate?>(step => step, _ => null),
            OverAthletes = evidence.Athletes,
            Source = "McGawley and Bishop 2006",
            Notes =
            [
                .. learning.LaterMinusDropped.Match<IReadOnlyList<string>>(gain => [$"All totals after the first {(learning.Drop == 1 ? "test" : $"{learning.Drop.ToString(CultureInfo.InvariantCulture)} tests")} were on average {evidence.Format.Change(gain)} than in {(learning.Drop == 1 ? "it" : "them")} ({gain.ConfidenceLevel} interval {evidence.Format.ChangeLimits(gain)}), which also holds the season's trend."], _ => []),
                .. learning.Notes,
            ],
        };
    }

    private static string Dropped(SeasonEvidence evidence)
    {
        var dropped = evidence.Selection.Options.Familiarisation;
        return dropped == 0 ? "none is" : dropped == 1 ? "the first is" : $"the first {dropped.ToString(CultureInfo.InvariantCulture)} are";
    }

    private static Finding Load(LoadAssociationRow row, SeasonEvidence evidence) => row.Correlation.Match(
        r => new Finding($"Within athletes, the {row.Window} and the session total go together with r = {Coefficient(r)}: {(r.Interval?.Contains(0) == true ? "this may be nothing" : $"the more load, the {(r.Value < 0 ? "faster" : "slower")}")}.")
        {
            Estimate = r,
            OverAthletes = row.Athletes,
            Source = "Bakdash and Marusich 2017",
            Notes = [.. row.Slope.Match<IReadOnlyList<string>>(slope => [$"Per 100 AU: {evidence.Format.SignedChange(Times(100, slope, Unit.Seconds))}{WithLimits(Times(100, slope, Unit.Seconds), evidence.Format)}. {Sentences.LoadUnits}"], _ => []), "A correlation over one season names no cause.", .. row.TestsWithoutLoad > 0 ? [$"{Sentences.Plural(row.TestsWithoutLoad, "test")} without a full record of load left out."] : Array.Empty<string>()],
        },
        Finding.Refused);

    private static Estimate Times(double factor, Estimate estimate, Unit unit)
    {
        Interval? Scaled(Interval interval) => new(Math.Min(factor * interval.Lower, factor * interval.Upper), Math.Max(factor * interval.Lower, factor * interval.Upper), interval.ConfidenceLevel);
        return new(factor * estimate.Value, unit, estimate.Observations, estimate.Method) { Interval = estimate.Interval is { } interval ? Scaled(interval) : null };
    }

    private static IEnumerable<Finding> Circumstances(CovariateModelResult model, SeasonEvidence evidence)
    {
        var clear = model.Effects.Where(effect => effect.Within.TryGet(out var within) && within.Interval?.Contains(0) == false).ToList();
        var known = model.Effects.Where(effect => effect.Within.IsEstimated).Select(effect => effect.Circumstance.Words()).ToList();
        yield return new Finding(clear.Count == 0
            ? $"None of the circumstances looked at ({Sentences.List(known)}) goes clearly with the session total within athletes."
            : $"Within athletes, the session total goes with {Sentences.List([.. clear.Select(effect => $"{effect.Circumstance.Words()} ({Effect(effect.Within.GetOrThrow(), evidence.Format)})")])}.")
        {
            Method = string.Create(CultureInfo.InvariantCulture, $"mixed model of {model.Tests} tests of {model.Athletes} athletes, each circumstance split into athlete mean and deviation"),
            OverAthletes = model.Athletes,
            Source = "Bates et al. 2015",
            Notes = [$"{Sentences.Plural(known.Count, "circumstance")} looked at together; some go with it by luck. What is rated during or after the test is an outcome and not among them."],
        };
    }

    private static string Effect(Estimate within, NumberFormat format) => $"{format.Value(within)}, {format.Interval(within)}: the more, the {(within.Value < 0 ? "faster" : "slower")}";

    private static Finding Design(SeasonEvidence evidence)
    {
        return new Finding($"The season rests on {Sentences.Plural(evidence.Selection.Sessions.Count, "test")} of {Sentences.Plural(evidence.Athletes, "athlete")} with the protocol {evidence.Protocol.Name}.")
        {
            Method = "observational, one squad, no control series",
            Notes = [.. evidence.Selection.Notes, "Tests that were missed are taken to be missing at random given those that were done."],
        };
    }
}
