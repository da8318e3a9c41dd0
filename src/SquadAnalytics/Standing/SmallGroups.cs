using SquadAnalytics.Internals;

namespace SquadAnalytics.Standing;

/// <summary>Keeps small groups out of anything exported or shared. A coach's own screen shows everything.</summary>
public static class SmallGroups
{
    /// <summary>The default threshold k: aggregates of fewer athletes are withheld.</summary>
    public const int DefaultThreshold = 5;

    /// <summary>Withholds the figures of small groups, and of as many further groups as it takes so that none can be found by subtraction from the whole.</summary>
    /// <remarks>A figure of fewer than k athletes is withheld. Where the whole is shared too and the withheld groups together have fewer than k
    /// athletes, or are a single group, the smallest group still shown is withheld as well. Thresholds of 3, 5 or 10 are in use (UNECE/Eurostat
    /// 2005, Glossary of statistical disclosure control).</remarks>
    /// <param name="groups">Groups that do not overlap and together make up the whole.</param>
    /// <param name="wholeIsShared">Whether a figure of the whole is shared beside them, or was shared before.</param>
    /// <param name="threshold">The threshold k; 2 or more.</param>
    /// <returns>The groups in their order, withheld figures as <see cref="Refusal.Suppressed"/>.</returns>
    public static IReadOnlyList<GroupCell> Suppress(IReadOnlyList<GroupCell> groups, bool wholeIsShared, int threshold = DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var withheld = Withheld([.. groups.Select(group => group.Athletes)], wholeIsShared, threshold);
        return [.. groups.Select((group, i) => withheld[i] ? group with { Figure = Withheld(group.Name, threshold) } : group)];
    }

    /// <summary>Which groups have to be withheld, by the rule of <see cref="Suppress"/>.</summary>
    /// <inheritdoc cref="Suppress" path="/remarks"/>
    /// <param name="athletes">How many athletes stand behind each group.</param>
    /// <param name="wholeIsShared">Whether a figure of the whole is shared beside them, or was shared before.</param>
    /// <param name="threshold">The threshold k; 2 or more.</param>
    public static IReadOnlyList<bool> Withheld(IReadOnlyList<int> athletes, bool wholeIsShared, int threshold = DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        Require.AtLeast(2, threshold);
        var withheld = athletes.Select(count => count < threshold).ToArray();
        while (wholeIsShared && NeedsAnother(athletes, withheld, threshold))
        {
            var next = Enumerable.Range(0, athletes.Count).Where(i => !withheld[i]).MinBy(i => athletes[i]);
            withheld[next] = true;
        }

        return withheld;
    }

    /// <summary>Withholds what two releases would reveal together: the difference of two groups of which one contains the other.</summary>
    /// <remarks>Assumes that a reader knows both figures and who stands behind them. Source: that of <see cref="Suppress"/>; this rule is this library's own.</remarks>
    /// <param name="earlier">The aggregate that was shared before.</param>
    /// <param name="later">The aggregate that is to be shared now.</param>
    /// <param name="inCommon">How many athletes stand behind both.</param>
    /// <param name="threshold">The threshold k; 2 or more.</param>
    /// <returns>The later aggregate, withheld (<see cref="Refusal.Suppressed"/>) where it rests on fewer than k athletes or the athletes in one release only are 1 or more and fewer than k.</returns>
    public static GroupCell SuppressAcrossReleases(GroupCell earlier, GroupCell later, int inCommon, int threshold = DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        Require.AtLeast(2, threshold);
        if (inCommon < 0 || inCommon > Math.Min(earlier.Athletes, later.Athletes))
            throw new ArgumentOutOfRangeException(nameof(inCommon), inCommon, FormattableString.Invariant($"From 0 to {Math.Min(earlier.Athletes, later.Athletes)} athletes can be in both."));
        int gone = earlier.Athletes - inCommon, come = later.Athletes - inCommon;
        // With athletes both gone and come the two groups differ in more than one unknown; with one side empty the other is a plain difference.
        var isRevealed = inCommon > 0 && ((gone == 0 && come > 0 && come < threshold) || (come == 0 && gone > 0 && gone < threshold));
        return later.Athletes < threshold || isRevealed ? later with { Figure = Withheld(later.Name, threshold) } : later;
    }

    private static bool NeedsAnother(IReadOnlyList<int> athletes, bool[] withheld, int threshold)
    {
        var hidden = Enumerable.Range(0, athletes.Count).Where(i => withheld[i]).ToList();
        return hidden.Count > 0 && hidden.Count < athletes.Count && (hidden.Count == 1 || hidden.Sum(i => athletes[i]) < threshold);
    }

    private static NotEstimable Withheld(string name, int threshold) =>
        new($"the figure of {name}", Refusal.Suppressed, FormattableString.Invariant($"a group that cannot be told apart from fewer than {threshold} athletes"), "one that can");
}
