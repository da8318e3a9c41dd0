using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics;

/// <summary>A percentage: 2.5 means 2.5 %.</summary>
/// <remarks><c>default</c> is 0 %.</remarks>
public readonly record struct Percent : IComparable<Percent>
{
    /// <summary>Makes a percentage.</summary>
    /// <param name="value">The number before the percent sign; finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number.</exception>
    public Percent(double value) => Value = Require.Finite(value);

    /// <summary>The number before the percent sign.</summary>
    public double Value { get; }

    /// <summary>The percentage that a difference of natural logarithms stands for: 100 (exp(b) - 1).</summary>
    /// <param name="logDifference">A difference of natural logarithms, b.</param>
    public static Percent FromLog(double logDifference) => new(100 * Elementary.ExpMinusOne(logDifference));

    /// <inheritdoc />
    public int CompareTo(Percent other) => Value.CompareTo(other.Value);

    /// <summary>Whether the left percentage is smaller.</summary>
    public static bool operator <(Percent left, Percent right) => left.Value < right.Value;

    /// <summary>Whether the left percentage is larger.</summary>
    public static bool operator >(Percent left, Percent right) => left.Value > right.Value;

    /// <summary>Whether the left percentage is smaller or equal.</summary>
    public static bool operator <=(Percent left, Percent right) => left.Value <= right.Value;

    /// <summary>Whether the left percentage is larger or equal.</summary>
    public static bool operator >=(Percent left, Percent right) => left.Value >= right.Value;

    /// <summary>The percentage with one decimal, for example <c>2.5 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.0} %");
}
