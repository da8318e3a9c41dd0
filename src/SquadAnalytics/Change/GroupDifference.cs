using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Different athletes in two groups: the difference between groups, never an effect.</summary>
public static class GroupDifference
{
    private const int NeededPerGroup = 6;

    /// <summary>Compares the times after, adjusted for the times before.</summary>
    /// <remarks>
    /// after = α + θ (before - mean before) + β group by least squares, in seconds, β the difference between the groups, t interval with n - 3 degrees of freedom. Assumes parallel straight lines and one scatter. The athletes were not drawn
    /// by lot into the groups, so the difference between groups is not what the training did: groups that start apart can differ in adjusted times and not in changes, or the reverse (Lord
    /// 1967, Psychol Bull 68:304-305; from memory). Source of the analysis: Vickers and Altman 2001, BMJ 323:1123-1124.
    /// </remarks>
    /// <param name="athletes">One row per athlete, of two groups.</param>
    /// <param name="reference">The group that the other is held against.</param>
    /// <param name="level">Level of the intervals; 90 % by default.</param>
    /// <returns>The difference, or <see cref="Refusal.TooFewAthletes"/> below 6 per group, <see cref="Refusal.NotComparable"/> where the times before do not overlap, <see cref="Refusal.ZeroVariance"/> where times do not scatter, or what else <see cref="Ancova.Estimate"/> refuses.</returns>
    /// <exception cref="ArgumentException">There are not two groups, none is the reference, or an athlete appears twice.</exception>
    public static Answer<GroupDifferenceResult> Fit(IReadOnlyList<BeforeAndAfter> athletes, string reference, ConfidenceLevel level = default)
    {
        var (from, to) = BeforeAndAfter.Split(athletes, reference);
        var fewest = Math.Min(from.Count, to.Count);
        if (fewest < NeededPerGroup) return new NotEstimable("the difference between groups", Refusal.TooFewAthletes, NeededPerGroup, fewest, "athletes in each group");
        if (from.Max(Before) < to.Min(Before) || to.Max(Before) < from.Min(Before))
            return new NotEstimable("the difference between groups", Refusal.NotComparable, "times before that overlap between groups", "times that do not");
        return Ancova.Estimate([.. athletes.Select(row => row.After.Value)], [.. athletes.Select(Before)], [.. athletes.Select(row => row.Group)])
            .Match<Answer<GroupDifferenceResult>>(fit => Of(fit, from, to, level), refusal => refusal);
    }

    private static Answer<GroupDifferenceResult> Of(Ancova fit, IReadOnlyList<BeforeAndAfter> from, IReadOnlyList<BeforeAndAfter> to, ConfidenceLevel level)
    {
        string reference = from[0].Group, compared = to[0].Group;
        var adjusted = fit.Comparisons(PairwiseAdjustment.None, level)[0];
        var sign = adjusted.Second == compared ? 1 : -1;
        Estimate Of(TEstimate number, int factor, Unit unit, string method) =>
            TInterval.Of(factor * number.Value, number.StandardError, number.DegreesOfFreedom, unit, level, from.Count + to.Count, method);
        return TTest.Welch([.. from.Select(row => row.ChangeSeconds)], [.. to.Select(row => row.ChangeSeconds)]).Select(changes => new GroupDifferenceResult
        {
            Reference = reference,
            Compared = compared,
            SmallerGroup = Math.Min(from.Count, to.Count),
            Difference = Of(adjusted.Difference, sign, Unit.Seconds, "difference between groups adjusted for the time before").WithNotes(
                "Not drawn by lot: this is a difference between groups, not what the training did.",
                "Groups that start apart can differ in adjusted times and not in changes, or the reverse: read both numbers."),
            Slope = Of(fit.Slope, 1, Unit.None, "slope of after on before, within groups"),
            DifferenceOfChanges = Of(changes, 1, Unit.Seconds, "Welch's t of the changes"),
        });
    }

    private static double Before(BeforeAndAfter row) => row.Before.Value;
}
