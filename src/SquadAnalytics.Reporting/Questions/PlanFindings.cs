using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>The findings of one question: how many more sessions until we can tell, and what can the planned ones show?</summary>
public static class PlanFindings
{
    private const string Power = "noncentral t, textbook";

    /// <summary>Puts the plan in plain words.</summary>
    public static Findings Of(PlanEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        IReadOnlyList<Finding> findings =
        [
            evidence.Change.Match(more => Change(more, evidence), Finding.Refused),
            evidence.SmallestChange.Match(
                smallest => new Finding($"With {Sentences.Plural(evidence.FurtherTests, "further test")} a change of {evidence.Format.WithInterval(smallest)} shows with the chance that is wanted; smaller ones are missed more often.") { Estimate = smallest, Source = Power, Notes = smallest.Notes },
                Finding.Refused),
            evidence.Break.Match(more => Break(more, evidence), Finding.Refused),
            evidence.Blocks.Match(more => Needed($"A mean difference of {evidence.Format.Value(evidence.Worthwhile.Estimate)} between two blocks, over {Sentences.Plural(evidence.Athletes, "athlete")},", more, "test", " per athlete in each block"), Finding.Refused),
            evidence.SmallestBlockDifference.Match(
                smallest => new Finding($"The planned block, {Sentences.Plural(evidence.Athletes, "athlete")} with {Sentences.Plural(evidence.TestsPerBlock, "test")} each in each block, can show a mean difference of {evidence.Format.WithInterval(smallest)}.") { Estimate = smallest, Source = Power, Notes = smallest.Notes },
                Finding.Refused),
            evidence.Noise.Match(noise => Signal(noise, evidence), Finding.Refused),
        ];
        return new Findings([.. findings.DistinctBy(finding => finding.Sentence)]);
    }

    private static Finding Change(MoreTestsResult more, PlanEvidence evidence)
    {
        var baseline = evidence.BaselineTests == 1 ? "one earlier test" : $"the mean of {Sentences.Plural(evidence.BaselineTests, "earlier test")}";
        var finding = Needed($"A change of {evidence.Athlete} as small as the smallest worthwhile one, {evidence.Format.Value(evidence.Worthwhile.Estimate)}, held against {baseline},", more, "further test");
        if (more.Needed.IsEstimated) return finding;
        var even = evidence.ChangeOfEqualSides.Match(sides => sides.Needed.Match<int?>(needed => (int)needed.Value, _ => null), _ => null);
        var way = even is { } tests
            ? $"{Sentences.Plural(tests, "test")} before and as many after would show it, if the level holds still on either side."
            : "Nor would 30 tests before and as many after: a larger change is what it takes.";
        return new Finding($"{finding.Sentence} {way}") { Estimate = finding.Estimate, Source = finding.Source, Notes = more.Assumptions };
    }

    private static Finding Break(MoreTestsResult more, PlanEvidence evidence)
    {
        var what = more.Question;
        if (evidence.TestsSoFar.Count > 0)
        {
            var usual = Descriptive.Mean([.. evidence.TestsSoFar.SelectMany(session => session.TimesSeconds)]);
            what += $", about {NumberFormat.Fixed(evidence.BreakSize.Value / 100 * usual, 1)} s a set,";
        }
        if (more.Curve[0] is not { Further: 0 } now || now.Power.Value < more.Wanted) return Needed(what, more, "further test");
        return new Finding($"{what} shows with a chance of {NumberFormat.Fixed(100 * now.Power.Value, 0)} % from the {Sentences.Plural(evidence.TestsSoFar.Count, "test")} so far: further tests add little.") { Estimate = now.Power, Source = Power, Notes = more.Assumptions };
    }

    private static Finding Needed(string what, MoreTestsResult more, string noun, string where = "")
    {
        var chance = $"a chance of {NumberFormat.Fixed(100 * more.Wanted, 0)} %";
        var last = more.Curve[^1];
        return new Finding(more.Needed.Match(
            needed => $"{what} shows with {chance} after {Sentences.Plural((int)needed.Value, noun)}{where}.",
            _ => $"{what} does not show with {chance} even after {Sentences.Plural(last.Further, noun)}{where}; the chance is then {NumberFormat.Fixed(100 * last.Power.Value, 0)} %."))
        {
            Estimate = more.Needed.Match<Estimate?>(needed => needed, _ => last.Power),
            Source = Power,
            Notes = more.Assumptions,
        };
    }

    private static Finding Signal(TypicalErrorResult noise, PlanEvidence evidence)
    {
        var signal = SignalAndNoise.Summarize(noise, evidence.Worthwhile);
        return new Finding($"Test noise is {evidence.Format.WithInterval(noise.Estimate)} against a smallest worthwhile change of {evidence.Format.Value(evidence.Worthwhile.Estimate)}: {signal.Word.Words()}; {Sentences.MeanOfTests(noise, evidence.Worthwhile, evidence.Format)}.")
        {
            Estimate = signal.Ratio,
            Source = "Hopkins 2000",
            OverAthletes = noise.Athletes,
            Notes = [Sentences.NoiseOfAllTests, "Steadier conditions (the same hour, floor, watch, warm-up) make the noise smaller and save tests."],
        };
    }
}
