using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Reporting;

/// <summary>
/// The sentences in which results are put: slots only, no adjectives. A direction is always a word, an interval always has its level,
/// and no sentence names a cause.
/// </summary>
public static class Sentences
{
    /// <summary>What an error says, without the name of a method's parameter: that is for whoever wrote the call.</summary>
    /// <param name="error">The error.</param>
    public static string Mistake(Exception error)
    {
        ArgumentNullException.ThrowIfNull(error);
        return error is ArgumentException { ParamName: { } name } ? error.Message.Replace($" (Parameter '{name}')", "", StringComparison.Ordinal) : error.Message;
    }

    /// <summary>How one athlete's latest tests compare with the ones before.</summary>
    /// <param name="athlete">The athlete as labelled in this report.</param>
    /// <param name="change">The change with its verdict.</param>
    /// <param name="format">How numbers are written.</param>
    public static string Change(string athlete, AthleteChangeResult change, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(format);
        var baseline = change.Baseline.Count == 1 ? "the test before" : $"the mean of the {Count(change.Baseline.Count)} tests before";
        var noise = NumberFormat.WithUnit(NumberFormat.Fixed(change.TypicalError.Value, change.TypicalError.Unit == Unit.Seconds ? format.EntryDecimals + 1 : 1), change.TypicalError.Unit);
        return $"{athlete}: {format.Change(change.Change)} than {baseline}{IntervalOf(change.Change, format)}. Test noise is about {noise}. {Capital(change.Verdict.Words())}.";
    }

    /// <summary>Whether the sets after a given one took longer, and whether by more than a steady drift would give.</summary>
    /// <param name="slowdown">The late slow-down of one athlete over sessions.</param>
    /// <param name="format">How numbers are written.</param>
    public static string LateSets(LateSlowdownResult slowdown, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(slowdown);
        ArgumentNullException.ThrowIfNull(format);
        var late = slowdown.LateContrast;
        var sets = slowdown.Selection.Sessions[0].Protocol.Sets;
        var size = NumberFormat.WithUnit(NumberFormat.Fixed(Math.Abs(late.Value), format.Decimals(late)), late.Unit);
        var limits = late.Interval is { } interval ? $" ({interval.ConfidenceLevel} interval {format.Limits(late)})" : "";
        var drift = slowdown.IsMoreThanSteadyDrift ? "more" : "not clearly more";
        var searched = slowdown.Choice == BreakChoice.FoundBySearch
            ? $" Set {Count(slowdown.AfterSet)} was found by looking: {NumberFormat.PValue(slowdown.LatePValue.Value)} with the search counted."
            : "";
        return $"In {Plural(slowdown.Sessions.Count, "test")}, {Sets(slowdown.AfterSet + 1, sets)} took {size} {(late.Value < 0 ? "less" : "longer")} than {Sets(1, slowdown.AfterSet)}{limits}; {drift} than a steady drift.{searched} Times alone do not say why.";
    }

    /// <summary>How two blocks differ, for the same athletes.</summary>
    /// <param name="comparison">The mean of the athletes' differences, later minus earlier, with its interval.</param>
    /// <param name="honesty">What else differed, the weightiest first; two are named in the sentence.</param>
    /// <param name="format">How numbers are written.</param>
    public static string Blocks(BlockComparisonResult comparison, BlockHonesty honesty, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(honesty);
        ArgumentNullException.ThrowIfNull(format);
        var difference = comparison.Change;
        var word = difference.Value < 0 ? "faster" : difference.Value > 0 ? "slower" : "no change";
        var limits = difference.Interval is { } interval ? $"{interval.ConfidenceLevel} interval {format.Limits(difference)}, " : "";
        var weightiest = honesty.Items.Where(item => item.Applies).Skip(1).Take(2).Select(item => item.Sentence);
        var tests = $"{Count(comparison.Athletes.Sum(athlete => athlete.FirstTests))} + {Count(comparison.Athletes.Sum(athlete => athlete.SecondTests))} tests";
        return $"{Capital(comparison.Second.Block.Name)} differed from {comparison.First.Block.Name} by {format.Value(difference)} per athlete, {word} ({limits}{Plural(comparison.Athletes.Count, "athlete")}, {tests}). {string.Join(' ', [BlockHonesty.NotRandomised, .. weightiest])}";
    }

    /// <summary>How an athlete stands in a list by performance: by name only with a consent to be named that covers the day, juniors and all others by code.</summary>
    /// <param name="athlete">The athlete.</param>
    /// <param name="day">The day.</param>
    public static string LeagueLabel(Athlete athlete, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(athlete);
        return Discretion.MayBeNamed(athlete, day) ? athlete.DisplayName : athlete.Code;
    }

    /// <summary>Why the noise of the test is not quite the same number in every report.</summary>
    internal const string LoadUnits = "AU: arbitrary units of training load, rating of the session (RPE) × minutes.";

    internal const string NoiseOfAllTests = "From all tests so far: a report on one test leaves that test out, so its noise differs a little.";

    /// <summary>What averaging tests buys: how often the mean of a few comes within the smallest worthwhile change of the true total, and how many make that often enough.</summary>
    /// <param name="noise">The noise of one session total.</param>
    /// <param name="worthwhile">The smallest worthwhile change.</param>
    /// <param name="format">How numbers are written.</param>
    public static string MeanOfTests(TypicalErrorResult noise, SmallestWorthwhileChange worthwhile, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(noise);
        ArgumentNullException.ThrowIfNull(worthwhile);
        ArgumentNullException.ThrowIfNull(format);
        ConfidenceLevel often = default;
        var (few, enough) = ((int)NumberOfTests.Needed(noise, worthwhile).Value, (int)NumberOfTests.NeededWithin(noise, worthwhile, often).Value);
        var chance = NumberFormat.Fixed(100 * NumberOfTests.ChanceWithin(noise, worthwhile, few).Value, 0);
        var more = enough > few ? $"; for {often} take {Count(enough)}" : "";
        return $"the mean of {Plural(few, "test")} is within {format.Value(worthwhile.Estimate)} of the true total with a chance of {chance} %{more}";
    }

    /// <summary>Why a measure is not given: <c>Not enough data for the slope: needs 3 sets, has 2 sets.</c></summary>
    public static string Refusal(NotEstimable refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return refusal.ToString();
    }

    /// <summary>The words for somebody without a test in the week that is looked at; null where a measure is refused for another reason.</summary>
    internal static string? NoTestThisWeek(NotEstimable refusal) =>
        refusal.Reason == SquadAnalytics.Refusal.TooFewSessions && refusal.Needed.EndsWith("in the week", StringComparison.Ordinal) ? "no test this week" : null;

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

    /// <summary>A run of sets in a sentence: <c>set 4</c>, <c>sets 4-6</c>.</summary>
    internal static string Sets(int from, int to) => from == to ? $"set {Count(from)}" : $"sets {Count(from)}-{Count(to)}";

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    internal static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
