using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>A typed refusal: which measure was asked for, why it is not given, what it needs and what was found.</summary>
public sealed record NotEstimable
{
    /// <summary>Makes a refusal in words.</summary>
    /// <param name="measure">The measure asked for, as it stands in a sentence: <c>the fatigue index</c>.</param>
    /// <param name="reason">Why it is refused.</param>
    /// <param name="needed">What it needs, with its noun: <c>at least 4 sessions</c>.</param>
    /// <param name="found">What was found: <c>3 sessions</c>.</param>
    public NotEstimable(string measure, Refusal reason, string needed, string found)
    {
        Measure = Require.Text(measure);
        Reason = reason;
        Needed = Require.Text(needed);
        Found = Require.Text(found);
    }

    /// <summary>Makes a refusal that is a count of something, for example sessions.</summary>
    /// <param name="measure">The measure asked for.</param>
    /// <param name="reason">Why it is refused.</param>
    /// <param name="needed">How many it needs at least.</param>
    /// <param name="found">How many there were.</param>
    /// <param name="noun">What is counted, in the plural: <c>sessions</c>.</param>
    public NotEstimable(string measure, Refusal reason, int needed, int found, string noun)
        : this(measure, reason, Count(needed, noun), Count(found, noun))
    {
    }

    /// <summary>Makes a refusal of more than a calculation takes, whose time or memory grows faster than the number.</summary>
    /// <param name="measure">The measure asked for.</param>
    /// <param name="most">How many it takes at most.</param>
    /// <param name="found">How many there were.</param>
    /// <param name="noun">What is counted, in the plural: <c>points</c>.</param>
    public static NotEstimable TooMany(string measure, int most, int found, string noun) =>
        new(measure, Refusal.TooManyObservations, "at most " + Count(most, noun), Count(found, noun));

    /// <summary>The measure asked for.</summary>
    public string Measure { get; }

    /// <summary>Why it is refused.</summary>
    public Refusal Reason { get; }

    /// <summary>What it needs.</summary>
    public string Needed { get; }

    /// <summary>What was found.</summary>
    public string Found { get; }

    /// <summary>The refusal as a sentence: <c>Not enough data for the slope: needs 3 sets, has 2 sets.</c></summary>
    public override string ToString() => $"{(Reason == Refusal.TooManyObservations ? "Too much" : "Not enough")} data for {Measure}: needs {Needed}, has {Found}.";

    private static string Count(int number, string noun) => string.Create(CultureInfo.InvariantCulture, $"{number} {noun}");
}
