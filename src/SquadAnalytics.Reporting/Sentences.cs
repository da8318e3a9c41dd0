using System.Globalization;

namespace SquadAnalytics.Reporting;

/// <summary>
/// The sentences in which results are put: slots only, no adjectives. A direction is always a word, an interval always has its level,
/// and no sentence names a cause.
/// </summary>
public static class Sentences
{
    /// <summary>How one athlete's latest result compares with a baseline.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="change">Later minus earlier, in seconds, with its interval.</param>
    /// <param name="baseline">What it is compared with: <c>the mean of the three tests before</c>.</param>
    /// <param name="typicalError">The test's noise, a standard deviation in seconds.</param>
    /// <param name="verdict">The verdict from the interval, without full stop: <c>faster by a worthwhile amount</c>.</param>
    /// <param name="format">How numbers are written.</param>
    public static string Change(string athlete, Estimate change, string baseline, Seconds typicalError, string verdict, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(format);
        return $"{athlete}: {format.Change(change)} than {baseline}{IntervalOf(change, format)}. Test noise is about {format.Spread(typicalError)}. {Capital(verdict)}.";
    }

    /// <summary>Whether the sets after a given one took longer, and whether by more than a steady drift would give.</summary>
    /// <param name="sessions">Number of sessions.</param>
    /// <param name="afterSet">The set after which the slow-down is looked for, b.</param>
    /// <param name="sets">Number of sets, n.</param>
    /// <param name="late">Mean of the later sets minus mean of the earlier ones, with its interval.</param>
    /// <param name="kink">The part of it that a straight drift does not explain, with its interval.</param>
    /// <param name="format">How numbers are written.</param>
    public static string LateSets(int sessions, int afterSet, int sets, Estimate late, Estimate kink, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(late);
        ArgumentNullException.ThrowIfNull(kink);
        ArgumentNullException.ThrowIfNull(format);
        if (afterSet < 1 || afterSet >= sets)
            throw new ArgumentOutOfRangeException(nameof(afterSet), afterSet, $"The set must lie between 1 and {Count(sets - 1)}, the last but one.");
        var decimals = format.Decimals(late);
        var size = NumberFormat.WithUnit(NumberFormat.Fixed(Math.Abs(late.Value), decimals), late.Unit);
        var limits = late.Interval is { } interval ? $" ({interval.ConfidenceLevel} interval {format.Limits(late)})" : "";
        var drift = kink.Lower > 0 ? "more" : "not clearly more";
        return $"In {Plural(sessions, "test")}, {Sets(afterSet + 1, sets)} took {size} {(late.Value < 0 ? "less" : "longer")} than {Sets(1, afterSet)}{limits}; {drift} than a steady drift. Times alone do not say why.";
    }

    /// <summary>How two blocks differ, for the same athletes.</summary>
    /// <param name="firstBlock">Name of the earlier block.</param>
    /// <param name="secondBlock">Name of the later block.</param>
    /// <param name="difference">Mean of the athletes' differences, later minus earlier, with its interval.</param>
    /// <param name="athletes">Number of athletes in both.</param>
    /// <param name="firstTests">Tests in the earlier block.</param>
    /// <param name="secondTests">Tests in the later block.</param>
    /// <param name="honesty">What else differed, the weightiest first; two are named in the sentence.</param>
    /// <param name="format">How numbers are written.</param>
    public static string Blocks(string firstBlock, string secondBlock, Estimate difference, int athletes, int firstTests, int secondTests, BlockHonesty honesty, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(difference);
        ArgumentNullException.ThrowIfNull(honesty);
        ArgumentNullException.ThrowIfNull(format);
        var word = difference.Value < 0 ? "faster" : difference.Value > 0 ? "slower" : "no change";
        var limits = difference.Interval is { } interval ? $"{interval.ConfidenceLevel} interval {format.Limits(difference)}, " : "";
        var weightiest = honesty.Items.Where(item => item.Applies).Skip(1).Take(2).Select(item => item.Sentence);
        return $"{Capital(secondBlock)} differed from {firstBlock} by {format.Value(difference)} per athlete, {word} ({limits}{Plural(athletes, "athlete")}, {Count(firstTests)} + {Count(secondTests)} tests). {string.Join(' ', [BlockHonesty.NotRandomised, .. weightiest])}";
    }

    /// <summary>Why a measure is not given: <c>Not enough data for the slope: needs 3 sets, has 2 sets.</c></summary>
    public static string Refusal(NotEstimable refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return refusal.ToString();
    }

    /// <summary>A number and its noun, in the plural where it is not 1: <c>6 tests</c>.</summary>
    /// <param name="number">The number.</param>
    /// <param name="noun">The noun in the singular, with a regular plural.</param>
    public static string Plural(int number, string noun) => number == 1 ? $"1 {noun}" : $"{Count(number)} {noun}s";

    /// <summary>Items in a sentence: <c>a</c>, <c>a and b</c>, <c>a, b and c</c>.</summary>
    public static string List(IReadOnlyList<string> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        return items.Count switch
        {
            0 => "",
            1 => items[0],
            _ => $"{string.Join(", ", items.Take(items.Count - 1))} and {items[^1]}",
        };
    }

    private static string IntervalOf(Estimate change, NumberFormat format) =>
        change.Interval is { } interval ? $", {interval.ConfidenceLevel} interval {format.ChangeLimits(change)}" : "";

    private static string Sets(int from, int to) => from == to ? $"set {Count(from)}" : $"sets {Count(from)}-{Count(to)}";

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
