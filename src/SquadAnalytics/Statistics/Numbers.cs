using System.Globalization;
using System.Runtime.CompilerServices;

namespace SquadAnalytics.Statistics;

/// <summary>Checks what every kernel asks of its numbers, in one place.</summary>
internal static class Numbers
{
    /// <summary>The numbers as an array that the kernel must not change.</summary>
    /// <exception cref="ArgumentException">There are fewer than <paramref name="minimum"/>, or one is not finite.</exception>
    public static double[] Of(IReadOnlyList<double> values, int minimum = 1, [CallerArgumentExpression(nameof(values))] string? name = null)
    {
        ArgumentNullException.ThrowIfNull(values, name);
        if (values.Count < minimum)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} must hold {minimum} or more numbers, but holds {values.Count}."), name);
        var array = values as double[] ?? [.. values];
        for (var i = 0; i < array.Length; i++)
        {
            if (!double.IsFinite(array[i]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name}[{i}] must be a finite number, but is {array[i]}."), name);
        }

        return array;
    }

    /// <summary>Checks that two samples are paired, number by number.</summary>
    /// <exception cref="ArgumentException">The lengths differ.</exception>
    public static void SameLength(
        double[] first,
        double[] second,
        [CallerArgumentExpression(nameof(first))] string? firstName = null,
        [CallerArgumentExpression(nameof(second))] string? secondName = null)
    {
        if (first.Length != second.Length)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{secondName} must be as long as {firstName}: {second.Length} against {first.Length}."), secondName);
    }

    /// <summary>A sorted copy.</summary>
    public static double[] Sorted(double[] values)
    {
        var copy = (double[])values.Clone();
        Array.Sort(copy);
        return copy;
    }
}
