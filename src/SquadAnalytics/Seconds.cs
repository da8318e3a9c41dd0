using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>A time or a difference of times, in seconds. Signed, because differences are times too: negative means faster.</summary>
/// <remarks><c>default</c> is 0 s.</remarks>
public readonly record struct Seconds : IComparable<Seconds>
{
    /// <summary>Makes a time of the given number of seconds.</summary>
    /// <param name="value">Seconds; finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number.</exception>
    public Seconds(double value) => Value = Require.Finite(value);

    /// <summary>The number of seconds.</summary>
    public double Value { get; }

    /// <summary>The sum of two times.</summary>
    public static Seconds operator +(Seconds left, Seconds right) => new(left.Value + right.Value);

    /// <summary>The signed difference: negative when <paramref name="left"/> is faster.</summary>
    public static Seconds operator -(Seconds left, Seconds right) => new(left.Value - right.Value);

    /// <summary>A time multiplied by a plain number.</summary>
    public static Seconds operator *(double factor, Seconds seconds) => new(factor * seconds.Value);

    /// <summary>Whether the left time is shorter.</summary>
    public static bool operator <(Seconds left, Seconds right) => left.Value < right.Value;

    /// <summary>Whether the left time is longer.</summary>
    public static bool operator >(Seconds left, Seconds right) => left.Value > right.Value;

    /// <summary>Whether the left time is shorter or equal.</summary>
    public static bool operator <=(Seconds left, Seconds right) => left.Value <= right.Value;

    /// <summary>Whether the left time is longer or equal.</summary>
    public static bool operator >=(Seconds left, Seconds right) => left.Value >= right.Value;

    /// <inheritdoc />
    public int CompareTo(Seconds other) => Value.CompareTo(other.Value);

    /// <summary>The time with two decimals and its unit, for example <c>62.40 s</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.00} s");
}
