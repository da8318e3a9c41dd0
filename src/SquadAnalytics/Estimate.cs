using System.Globalization;
using System.Text;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>
/// One estimated number that explains itself: value and unit, standard error, interval and level, degrees of freedom,
/// observations, method and notes.
/// </summary>
public sealed record Estimate
{
    /// <summary>Makes an estimate.</summary>
    /// <param name="value">The estimated number, in <paramref name="unit"/>; finite.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="observations">How many observations it rests on.</param>
    /// <param name="method">How it was obtained, in a few words, for example <c>one-sample t over sessions</c>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or observations is negative.</exception>
    public Estimate(double value, Unit unit, int observations, string method)
    {
        Value = Require.Finite(value);
        Unit = unit;
        Observations = Require.AtLeast(0, observations);
        Method = Require.Text(method);
    }

    /// <summary>The estimated number, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>Unit of the value, the standard error and the limits.</summary>
    public Unit Unit { get; }

    /// <summary>How many observations the estimate rests on.</summary>
    public int Observations { get; }

    /// <summary>How the estimate was obtained.</summary>
    public string Method { get; }

    /// <summary>Standard error, or null where the method gives none.</summary>
    public double? StandardError { get; init; }

    /// <summary>Confidence interval, or null where the number is descriptive.</summary>
    public Interval? Interval { get; init; }

    /// <summary>Degrees of freedom of the interval, or null where it has none.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>p-value of the hypothesis that the method names, or null.</summary>
    public double? PValue { get; init; }

    /// <summary>What a reader has to know to use the number: defaults applied, warnings, limits.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Lower limit, or null without an interval.</summary>
    public double? Lower => Interval?.Lower;

    /// <summary>Upper limit, or null without an interval.</summary>
    public double? Upper => Interval?.Upper;

    /// <summary>Level of the interval, or null without one.</summary>
    public ConfidenceLevel? ConfidenceLevel => Interval?.ConfidenceLevel;

    /// <summary>The same estimate with further notes behind its own.</summary>
    public Estimate WithNotes(params IEnumerable<string> notes) => this with { Notes = [.. Notes, .. notes] };

    /// <summary>Value, unit and interval, for example <c>5.98 s, 90 % interval 5.60 to 6.35</c>.</summary>
    public override string ToString()
    {
        var symbol = Unit.Symbol();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Value:0.00##}");
        if (symbol.Length > 0) text.Append(' ').Append(symbol);
        if (Interval is { } interval) text.Append(CultureInfo.InvariantCulture, $", {interval.ConfidenceLevel} interval {interval.Lower:0.00##} to {interval.Upper:0.00##}");
        return text.ToString();
    }
}
