using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>The findings of one question: did two training blocks differ, for whom, does it hang on how it is computed, and what else may have done it?</summary>
public static class BlockFindings
{
    private const int ItemsInSentence = 2;

    /// <summary>Puts the comparison in plain words, in the order in which a coach should meet it.</summary>
    public static Findings Of(BlockEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return new Findings(evidence.Pair.AreTwoGroups ? [.. TwoGroups(evidence)] : [.. SameAthletes(evidence)]);
    }

    private static IEnumerable<Finding> SameAthletes(BlockEvidence evidence)
    {
        if (!evidence.Comparison.TryGet(out var comparison))
        {
            yield return Finding.Refused(evidence.Comparison.Refusal!);
            foreach (var finding in Honesty(evidence, skip: 0)) yield return finding;
            yield break;
        }

        var athletes = comparison.Athletes.Count;
        yield return Primary(comparison, evidence) with { OverAthletes = athletes };
        yield return Companions(comparison, evidence) with { OverAthletes = athletes };
        if (evidence.Series.TryGet(out var series)) yield return BeyondTrend(series, evidence) with { OverAthletes = athletes };
        yield return ForWhom(comparison, evidence);
        if (Tipping(comparison, evidence) is { } tipping) yield return tipping with { OverAthletes = athletes };
        yield return WhoIsIn(comparison, evidence);
        yield return evidence.MoreTests.Match(more => More(more, comparison, evidence) with { OverAthletes = athletes }, Finding.Refused);
        foreach (var finding in Honesty(evidence, ItemsInSentence)) yield return finding;
    }

    private static Finding Primary(BlockComparisonResult comparison, BlockEvidence evidence)
    {
        var verdict = ChangeVerdicts.Of(comparison.Change, evidence.Worthwhile);
        var sentence = evidence.Facts.Match(facts => Sentences.Blocks(comparison, new BlockHonesty(facts, evidence.Squad), evidence.Format), _ => comparison.ToString());
        return new Finding($"{sentence} Against a smallest worthwhile change of {evidence.Format.Value(evidence.Worthwhile.Estimate)}: {verdict.Words()}.")
        {
            Estimate = comparison.Change,
            Source = "paired t over athletes, textbook; verdict after Schuirmann 1987, Lakens 2017",
            Notes =
            [
                $"In percent: {evidence.Format.Change(comparison.RelativeChange)}, {comparison.RelativeChange.ConfidenceLevel} interval {evidence.Format.ChangeLimits(comparison.RelativeChange)}.",
                $"With half that size: {ChangeVerdicts.Of(comparison.Change, evidence.Worthwhile.Times(0.5)).Words()}; with twice: {ChangeVerdicts.Of(comparison.Change, evidence.Worthwhile.Times(2)).Words()}.",
                .. evidence.Pair.WasSwapped ? ["The later block was named first; the difference is later minus earlier all the same."] : Array.Empty<string>(),
            ],
        };
    }

    private static Finding Companions(BlockComparisonResult comparison, BlockEvidence evidence)
    {
        bool IsSameSide(Estimate estimate) => Math.Sign(estimate.Value) == Math.Sign(comparison.Change.Value) && estimate.Interval?.Contains(0) == comparison.Change.Interval?.Contains(0);
        (string Name, Answer<Estimate> Answer)[] all =
        [
            ("rank-based", comparison.RankChange), ("weighted by tests", comparison.WeightedChange), ("mixed model of all athletes", evidence.Model.Select(model => model.Change)),
        ];
        var known = all.Where(item => item.Answer.IsEstimated).Select(item => (item.Name, Estimate: item.Answer.GetOrThrow())).ToList();
        var agree = known.TrueForAll(item => IsSameSide(item.Estimate));
        return new Finding(known.Count == 0
            ? "No second way of computing the difference has enough data."
            : $"{(agree ? "The averages agree" : "The averages do not agree")}: {Sentences.List([.. known.Select(item => $"{item.Name} {evidence.Format.Change(item.Estimate)} ({item.Estimate.ConfidenceLevel} interval {evidence.Format.ChangeLimits(item.Estimate)})")])}.")
        {
            Estimate = comparison.SignFlipPValue.Match<Estimate?>(p => p with { PValue = p.Value }, _ => null),
            Source = "Hodges and Lehmann 1963; Knapp and Hartung 2003; Bates et al. 2015",
            Notes = [agree ? "All lie on the same side of no change and say the same about it. None of them allows for the season's trend: that is asked next." : "They do not all say the same about no change: lean on the widest."],
        };
    }

    private static Finding BeyondTrend(InterruptedSeriesResult series, BlockEvidence evidence)
    {
        var jump = series.SerialLevelChange;
        var reading = series.IsWithoutVerdict ? "few weeks, so no verdict" : ChangeVerdicts.Of(jump, evidence.Worthwhile).Words();
        return new Finding($"Allowing for the season's trend: at the start of {evidence.Pair.Second} the squad, its weeks compared within athletes, was {evidence.Format.Change(jump)} than the line through the weeks before, {jump.ConfidenceLevel} interval {evidence.Format.ChangeLimits(jump)}; against a smallest worthwhile change of {evidence.Format.Value(evidence.Worthwhile.Estimate)}: {reading}. By the last test, weeks taken as independent: {evidence.Format.Change(series.EffectAtEnd)}, {evidence.Format.ChangeLimits(series.EffectAtEnd)}.")
        {
            Estimate = jump,
            Source = "Wagner et al. 2002",
            Notes = ["A season that gets faster anyway makes any later block look better: this line asks whether the second block did more than the line through the first would have given.", "A block that works slowly shows in the slope, not in the jump. A jump in the first week comes too soon for training: ask what else changed."],
        };
    }

    private static Finding ForWhom(BlockComparisonResult comparison, BlockEvidence evidence) => evidence.Athletes.Match(
        athletes =>
        {
            var known = athletes.Rows.Where(row => row.Change.IsEstimated).ToList();
            string Names(Func<SquadChangeRow, bool> fits) => Sentences.List([.. known.Where(fits).Select(row => evidence.Squad.Athlete(row.AthleteId).LabelOn(athletes.WeekFrom))]);
            bool IsFaster(SquadChangeRow row) => row.Change.GetOrThrow().Change.Value < 0;
            var (faster, slower) = (Names(row => row.IsFlagged && IsFaster(row)), Names(row => row.IsFlagged && !IsFaster(row)));
            var told = (faster.Length, slower.Length) switch
            {
                (0, 0) => "nobody's own difference stands out",
                (_, 0) => $"faster beyond noise: {faster}",
                (0, _) => $"slower beyond noise: {slower}",
                _ => $"faster beyond noise: {faster}; slower beyond noise: {slower}",
            };
            var unclear = Names(row => !row.IsFlagged);
            var open = unclear.Length == 0 ? "" : $"; not told apart from noise: {unclear}";
            return new Finding($"Athlete by athlete ({known.Count.ToString(CultureInfo.InvariantCulture)} athletes checked, their number allowed for), {told}{open}.")
            {
                Method = "difference of block means against the typical error, p-values adjusted together",
                Source = "Benjamini and Hochberg 1995",
                Notes =
                [
                    comparison.SpreadOfTrueChanges.Match(
                        spread => spread.Lower is > 0
                            ? $"Athletes differ in their true difference: SD between them {evidence.Format.WithInterval(spread)}."
                            : $"The tests do not show that athletes differ in their true difference (SD between them {evidence.Format.WithInterval(spread)}): the scatter of single differences can be noise.",
                        Sentences.Refusal),
                    "A difference that is not told apart from noise may be there all the same.",
                ],
            };
        },
        Finding.Refused);

    private static Finding? Tipping(BlockComparisonResult comparison, BlockEvidence evidence)
    {
        if (!evidence.Facts.TryGet(out var facts) || facts.SecondDue.Share is not { Value: < 100 } share) return null;
        var tipping = MissingTests.Tipping(comparison.Change, new Percent(100 - share.Value));
        return new Finding($"{NumberFormat.Fixed(100 - share.Value, 0)} % of the tests due in {evidence.Pair.Second} were missed: to cancel the difference they would have had to be about {About(tipping.ErasesDifference)} {(comparison.Change.Value < 0 ? "slower" : "faster")} on average than those done{(tipping.ReachesLimit.Value > 0 ? $" ({About(tipping.ReachesLimit)} to leave it open)" : "")}.")
        {
            Estimate = tipping.ErasesDifference,
            Source = "pattern mixture, textbook",
            Notes = [.. tipping.ReachesLimit.Value > 0 ? Array.Empty<string>() : ["The interval reaches no change already."], .. facts.FirstDue.Share is { Value: < 100 } earlier ? [$"Only these are asked about: of the tests due in {evidence.Pair.First}, {NumberFormat.Fixed(100 - earlier.Value, 0)} % were missed too."] : Array.Empty<string>()],
        };
    }

    private static string About(Estimate seconds) => NumberFormat.WithUnit(NumberFormat.Fixed(seconds.Value, 0), seconds.Unit);

    private static Finding WhoIsIn(BlockComparisonResult comparison, BlockEvidence evidence)
    {
        var left = comparison.LeftOut.Select(athlete => $"{evidence.Squad.Athlete(athlete.AthleteId).LabelOn(evidence.Pair.Second.From)} ({athlete.Reason})").ToList();
        return new Finding(left.Count == 0 ? $"Nobody with a test in the two blocks is left out ({Sentences.Plural(comparison.Athletes.Count, "athlete")})." : $"Left out of the comparison: {Sentences.List(left)}.")
        {
            Method = "at least two eligible tests in each block",
            Notes = evidence.Facts.Match<IReadOnlyList<string>>(facts => [$"Tests done of those due: {facts.FirstDue} in {facts.First.Block}, {facts.SecondDue} in {facts.Second.Block}; eligible of them: {facts.First.Tests.ToString(CultureInfo.InvariantCulture)} and {facts.Second.Tests.ToString(CultureInfo.InvariantCulture)}, for first tests while the boxer learns the circuit, void and incomplete ones are left out."], _ => []),
        };
    }

    private static Finding More(MoreTestsResult more, BlockComparisonResult comparison, BlockEvidence evidence)
    {
        var told = comparison.Change.Interval?.Contains(0) == false;
        var lead = told ? "For the next comparison like this" : "To settle it";
        return new Finding(more.Needed.Match(
            needed => $"{lead}: a true difference of {evidence.Format.Value(evidence.Worthwhile.Estimate)} over {Sentences.Plural(comparison.Athletes.Count, "athlete")} shows with a chance of {NumberFormat.Fixed(100 * more.Wanted, 0)} % after {Sentences.Plural((int)needed.Value, "test")} per athlete in each block.",
            _ => $"{lead}: a true difference of {evidence.Format.Value(evidence.Worthwhile.Estimate)} over {Sentences.Plural(comparison.Athletes.Count, "athlete")} would not show with a chance of {NumberFormat.Fixed(100 * more.Wanted, 0)} % even after {Sentences.Plural(more.Curve[^1].Further, "test")} in each block: more athletes help, more tests do not."))
        {
            Estimate = more.Needed.Match<Estimate?>(needed => needed, _ => null),
            Method = "power of the paired t test",
            Source = "noncentral t, textbook",
            Notes = more.Assumptions,
        };
    }

    private static IEnumerable<Finding> Honesty(BlockEvidence evidence, int skip) => evidence.Facts.Match<IEnumerable<Finding>>(
        facts => new BlockHonesty(facts, evidence.Squad).Items.Where(item => item.Applies).Skip(1).Skip(skip).Select(item => new Finding(item.Sentence) { Method = $"asked of every comparison: {item.Question}" }),
        refused => [Finding.Refused(refused)]);

    private static IEnumerable<Finding> TwoGroups(BlockEvidence evidence)
    {
        yield return evidence.Groups.Match(
            found => new Finding($"{found.Compared} differed from {found.Reference} by {evidence.Format.Change(found.Difference)} after their blocks, at equal times before ({evidence.Format.Interval(found.Difference)}). The athletes were not drawn by lot into the groups: this is a difference between groups, not what the training did.")
            {
                Estimate = found.Difference,
                Source = "Vickers and Altman 2001; Lord 1967",
                OverAthletes = found.SmallerGroup,
                Notes = [$"Against a smallest worthwhile change of {evidence.Format.Value(evidence.Worthwhile.Estimate)}: {ChangeVerdicts.Of(found.Difference, evidence.Worthwhile).Words()}.", .. found.Notes.Skip(1)],
            },
            Finding.Refused);
        if (evidence.Groups.TryGet(out var groups))
        {
            yield return new Finding($"The plain second opinion: the mean changes differ by {evidence.Format.Change(groups.DifferenceOfChanges)} ({evidence.Format.Interval(groups.DifferenceOfChanges)}).") { Estimate = groups.DifferenceOfChanges, Source = "Welch 1947", OverAthletes = groups.SmallerGroup };
        }

        yield return new Finding(evidence.Pair.First.DefinedAfterData || evidence.Pair.Second.DefinedAfterData ? "The blocks were chosen after the results were seen." : "The blocks were defined before the results were seen.") { Method = "written down with the block" };
        yield return evidence.Noise.Match(noise => new Finding($"Test noise: the typical error of one session total is {evidence.Format.WithInterval(noise.Estimate)}.") { Estimate = noise.Estimate, Source = "Hopkins 2000", OverAthletes = noise.Athletes }, Finding.Refused);
    }
}
